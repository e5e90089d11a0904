#pragma once
#include <catalog/catalogue.h>
#include <cstdint>
#include <filesystem>
#include <string>

namespace ohmkin::test {

/// How much of each there is, by the number of where-used rows: at 1,000,000 of them 60,000 senders, 3,000 vehicle
/// lines with 9,000 clusters, 8,000 castings of 1,000 engines.
struct LargeSizes {
  explicit LargeSizes(std::int64_t whereUsedRows);
  std::int64_t rows;
  std::int64_t senders;
  std::int64_t lines;
  std::int64_t clusters;
  std::int64_t castings;
  std::int64_t engines;
  std::int64_t gauges;
  std::int64_t families = 40;
  std::int64_t makes = 24;
};

/// A catalogue of that size in which every question can be asked: the same rows for the same number, whatever the
/// machine. Every name, number and fact in it is made up. A million rows take some seconds.
enum class SearchIndexMade { yes, no };
catalog::Catalogue largeCatalogue(const std::filesystem::path& file, std::int64_t whereUsedRows,
                                  SearchIndexMade index = SearchIndexMade::yes);

/// The names in it, for asking about them.
std::string largeSenderNumber(std::int64_t sender);  ///< from 0
std::string largeCastingNumber(std::int64_t casting);
std::string largeLineName(std::int64_t line);  ///< without its make
std::string largeMakeName(std::int64_t make);

}  // namespace ohmkin::test
