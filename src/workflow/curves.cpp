#include <curve/model_text.h>
#include <curve/two_point.h>
#include <workflow/curves.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::workflow {
namespace {

/// A measured table has one point a temperature, by rising temperature: repeated readings are averaged in ln R.
std::vector<std::pair<Temperature, Ohms>> tablePoints(const catalog::CurveRecord& record) {
  std::vector<catalog::Sample> samples = record.samples;
  std::stable_sort(samples.begin(), samples.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  std::vector<std::pair<Temperature, Ohms>> points;
  for (std::size_t i = 0; i < samples.size();) {
    double sum = 0;
    std::size_t j = i;
    for (; j < samples.size() && samples[j].at == samples[i].at; ++j) sum += std::log(inOhms(samples[j].ohms));
    points.emplace_back(samples[i].at, ohms(std::exp(sum / static_cast<double>(j - i))));
    i = j;
  }
  return points;
}

Expected<curve::Model> modelOf(const catalog::CurveRecord& record) {
  if (record.model == catalog::CurveModel::table) return curve::Model(curve::MonotoneTable{tablePoints(record)});
  return curve::modelFrom(catalog::text(record.model), record.coefficients, "curve " + record.id.text);
}

}  // namespace

Expected<SourcedCurve> curveOf(const catalog::CurveRecord& record) {
  const auto named = [&](Refusal refusal) {
    if (refusal.where.empty()) refusal.where = "curve " + record.id.text;
    return refusal;
  };
  const auto model = modelOf(record);
  if (!model) return tl::make_unexpected(named(model.error()));
  curve::Covariance covariance;
  covariance.values = record.covariance;
  while (covariance.size * covariance.size < covariance.values.size()) ++covariance.size;
  auto made = curve::Curve::make(*model, record.valid, std::move(covariance), record.floor);
  if (!made) return tl::make_unexpected(named(made.error()));
  return SourcedCurve{std::move(*made), true, record.lot, catalog::cite(record.source)};
}

Expected<SourcedCurve> curveOf(const catalog::Family& family) {
  if (!family.curves.empty()) return curveOf(family.curves.front());
  if (!family.coldHot)
    return refuse("family-without-curve", "family " + family.id.text, "neither a curve nor cold and hot ohms",
                  "one of them");
  const curve::TwoPoint stated{family.coldHot->cold, family.coldHot->hot, family.coldHot->coldAt,
                               family.coldHot->hotAt};
  auto made = curve::fromTwoPoints(stated);
  if (!made) return tl::make_unexpected(made.error());
  return SourcedCurve{std::move(*made), stated.stated(), {}, catalog::cite(family.source)};
}

}  // namespace ohmkin::workflow
