#pragma once
#include <catalog/catalogue.h>
#include <catalog/key.h>
#include <vector>

/// What the shop itself has.
namespace ohmkin::catalog {

struct Stock {
  SenderKey sender;
  std::string bin;
  int quantity = 0;
  int minimum = 0;
};

std::vector<Stock> stock(const Catalogue& catalogue, const SenderKey& sender);  ///< fullest bin first

}  // namespace ohmkin::catalog
