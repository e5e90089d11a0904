#pragma once
#include <string>
#include <tl/expected.hpp>

namespace ohmkin {

/// Why an input was not taken: what was found, where, and what was expected instead. Nothing has been changed.
struct Refusal {
  std::string code;   ///< stable, kebab-case: "temperature-unreadable"
  std::string where;  ///< "--reading", "senders.csv:14:thread", "shop.ohmkin"; empty where the input is the whole call
  std::string found;  ///< the offending text as given, or what the file turned out to be
  std::string expected;  ///< completes "expected …": "ohms above 0, for example 51 or 1.2 kΩ"

  /// One clear sentence: "--reading: found '95F=', expected …".
  [[nodiscard]] std::string sentence() const;

  friend bool operator==(const Refusal&, const Refusal&) = default;
};

/// The pure rooms and the use cases return this; only the database throws.
template <class T>
using Expected = tl::expected<T, Refusal>;

inline tl::unexpected<Refusal> refuse(std::string code, std::string where, std::string found, std::string expected) {
  return tl::make_unexpected(Refusal{std::move(code), std::move(where), std::move(found), std::move(expected)});
}

}  // namespace ohmkin
