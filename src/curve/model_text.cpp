#include <curve/model_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/parse.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

namespace ohmkin::curve {
namespace {

struct Numbers {
  std::vector<double> values;
  std::optional<double> vanDusen;
};

Expected<Numbers> numbersIn(std::string_view text, std::string_view where) {
  constexpr std::string_view blanks = " \t\r\n";
  Numbers out;
  for (std::size_t at = text.find_first_not_of(blanks); at != std::string_view::npos;
       at = text.find_first_not_of(blanks, at)) {
    const std::size_t end = std::min(text.find_first_of(blanks, at), text.size());
    std::string_view word = text.substr(at, end - at);
    const bool named = word.starts_with("c=");
    if (named) word.remove_prefix(2);
    const auto number = parseNumber(word, where);
    if (!number) return tl::make_unexpected(number.error());
    if (named) out.vanDusen = *number;
    else out.values.push_back(*number);
    at = end;
  }
  return out;
}

tl::unexpected<Refusal> miscounted(std::string_view name, std::size_t count, std::string_view where,
                                   std::string expected) {
  return refuse("curve-coefficients", std::string(where), fmt::format("{} numbers for {}", count, name),
                std::move(expected));
}

Model polynomialFrom(const Numbers& numbers) {
  return Polynomial{
      ohms(numbers.values.front()), {numbers.values.begin() + 1, numbers.values.end()}, numbers.vanDusen.value_or(0)};
}

Model tableFrom(std::span<const double> values) {
  MonotoneTable table;
  for (std::size_t i = 0; i + 1 < values.size(); i += 2)
    table.points.emplace_back(kelvin(values[i]), ohms(values[i + 1]));
  return table;
}

std::vector<double> numbersOf(const Beta& m) { return {inOhms(m.r0), inKelvin(m.t0), m.b}; }
std::vector<double> numbersOf(const SteinhartHart& m) { return {m.c.begin(), m.c.begin() + m.terms}; }
std::vector<double> numbersOf(const Exponential& m) { return {m.a, m.b, m.c}; }
std::vector<double> numbersOf(const Polynomial& m) {
  std::vector<double> out{inOhms(m.r0)};
  out.insert(out.end(), m.a.begin(), m.a.end());
  return out;
}
std::vector<double> numbersOf(const MonotoneTable& m) {
  std::vector<double> out;
  for (const auto& [t, r] : m.points) out.insert(out.end(), {inKelvin(t), inOhms(r)});
  return out;
}

}  // namespace

Expected<Model> modelFrom(std::string_view name, std::string_view coefficients, std::string_view where) {
  const auto numbers = numbersIn(coefficients, where);
  if (!numbers) return tl::make_unexpected(numbers.error());
  const std::vector<double>& v = numbers->values;
  if (numbers->vanDusen && name != "polynomial")
    return refuse("curve-coefficients", std::string(where), fmt::format("'c=' for {}", name),
                  "'c=' for a polynomial only");
  if (name == "beta") {
    if (v.size() != 3) return miscounted(name, v.size(), where, "3 numbers: r0 in Ω, t0 in K, b in K");
    return Beta{ohms(v[0]), kelvin(v[1]), v[2]};
  }
  if (name == "steinhart-hart") {
    if (v.size() < 2 || v.size() > 4) return miscounted(name, v.size(), where, "2 to 4 numbers: c0 c1 c2 c3");
    SteinhartHart model{{}, static_cast<int>(v.size())};
    std::copy(v.begin(), v.end(), model.c.begin());
    return model;
  }
  if (name == "exponential") {
    if (v.size() != 3) return miscounted(name, v.size(), where, "3 numbers: a in Ω, b in K, c in K");
    return Exponential{v[0], v[1], v[2]};
  }
  if (name == "polynomial") {
    if (v.size() < 2) return miscounted(name, v.size(), where, "at least 2 numbers: r0 in Ω, a1 …");
    return polynomialFrom(*numbers);
  }
  if (name == "table") {
    if (v.size() < 8 || v.size() % 2 != 0) return miscounted(name, v.size(), where, "at least 4 pairs: T in K, R in Ω");
    return tableFrom(v);
  }
  return refuse("curve-model", std::string(where), std::string(name),
                "beta, steinhart-hart, exponential, polynomial or table");
}

std::string_view textName(const Model& model) {
  constexpr std::array<std::string_view, 5> names{"beta", "steinhart-hart", "exponential", "polynomial", "table"};
  return names.at(model.index());
}

std::string coefficientText(const Model& model) {
  std::string text = fmt::format("{}", fmt::join(std::visit([](const auto& m) { return numbersOf(m); }, model), " "));
  const auto* polynomial = std::get_if<Polynomial>(&model);
  if (polynomial && polynomial->vanDusen != 0) text += fmt::format(" c={}", polynomial->vanDusen);
  return text;
}

namespace {

/// "+ 3.1e-07" or "− 3.1e-07": a further term of a sum.
std::string further(double number, std::string_view what) {
  return fmt::format(" {} {:.6g}{}", number < 0 ? "−" : "+", std::abs(number), what);
}

struct Equation {
  std::string operator()(const Beta& beta) const {
    return fmt::format("R = {:.6g} Ω · exp({:.6g} K · (1/T − 1/{:.6g} K))", inOhms(beta.r0), beta.b, inKelvin(beta.t0));
  }
  std::string operator()(const SteinhartHart& law) const {
    std::string text = fmt::format("1/T = {:.6g}{}", law.c[0], further(law.c[1], " · L"));
    if (law.terms > 3) text += further(law.c[3], " · L²");
    if (law.terms > 2) text += further(law.c[2], " · L³");
    return text + ", L = ln(R/Ω), T in K";
  }
  std::string operator()(const Exponential& law) const {
    return fmt::format("R = {:.6g} Ω · exp({:.6g} K / (T{} K))", law.a, law.b, further(law.c, ""));
  }
  std::string operator()(const Polynomial& law) const {
    std::string text = fmt::format("R = {:.6g} Ω · (1", inOhms(law.r0));
    for (std::size_t i = 0; i < law.a.size(); ++i)
      text += further(law.a[i], i == 0 ? " · t" : fmt::format(" · t^{}", i + 1));
    if (law.vanDusen != 0) text += further(law.vanDusen, " · (t − 100) · t³ below 0 °C");
    return text + "), t in °C";
  }
  std::string operator()(const MonotoneTable& table) const {
    return fmt::format("a smooth curve through {} points", table.points.size());
  }
};

}  // namespace

std::string equationText(const Model& model) { return std::visit(Equation{}, model); }

}  // namespace ohmkin::curve
