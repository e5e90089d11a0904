#pragma once
#include <compare>
#include <functional>
#include <string>
#include <utility>

/// Keys of the catalogue's rows: texts, one type a noun, so that a thread's designation is never handed over as a part
/// number.
namespace ohmkin::catalog {

template <class Noun>
struct Key {
  std::string text;
  Key() = default;
  explicit Key(std::string t) : text(std::move(t)) {}
  [[nodiscard]] bool empty() const { return text.empty(); }
  friend auto operator<=>(const Key&, const Key&) = default;
};

using SourceKey = Key<struct SourceNoun>;
using ThreadKey = Key<struct ThreadNoun>;  ///< designation: "1/2-14 NPT"
using TerminalKey = Key<struct TerminalNoun>;
using PigtailKey = Key<struct PigtailNoun>;
using AdapterKey = Key<struct AdapterNoun>;
using FamilyKey = Key<struct FamilyNoun>;
using CurveKey = Key<struct CurveNoun>;
using SenderKey = Key<struct SenderNoun>;  ///< part number
using GaugeKey = Key<struct GaugeNoun>;
using MakeKey = Key<struct MakeNoun>;
using LineKey = Key<struct LineNoun>;
using ClusterKey = Key<struct ClusterNoun>;
using EngineKey = Key<struct EngineNoun>;
using CastingKey = Key<struct CastingNoun>;  ///< casting number
using LayoutKey = Key<struct LayoutNoun>;

}  // namespace ohmkin::catalog

template <class Noun>
struct std::hash<ohmkin::catalog::Key<Noun>> {
  std::size_t operator()(const ohmkin::catalog::Key<Noun>& key) const noexcept {
    return std::hash<std::string>{}(key.text);
  }
};
