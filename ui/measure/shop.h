#pragma once
#include <workflow/bench_families.h>
#include <QStringList>
#include <memory>

namespace ohmkin::measure {

/// What the page keeps of the open catalogue. Read once, on the thread; families are asked many times.
struct Shop {
  workflow::BenchFamilies families;
  QStringList familyNames;
  QStringList parts;  ///< numbers of senders
  QStringList meters;
  QStringList thermometers;
  QStringList baths;
};
using SharedShop = std::shared_ptr<const Shop>;

}  // namespace ohmkin::measure
