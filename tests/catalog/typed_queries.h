#pragma once
#include <cstdint>
#include <string>
#include <vector>
#include "large_catalogue.h"

/// What people type into the box, drawn from a large catalogue's own names: numbers in other punctuation, lines with
/// and without their make, castings, words, a letter wrong in every fifth.
namespace ohmkin::test {

class TypedQueries {
 public:
  TypedQueries(const LargeSizes& sizes, std::uint64_t seed) : sizes_(sizes), state_(seed) {}

  std::string next() {
    std::string text = right();
    if (draw(5) == 0 && text.size() > 3) spoil(text);
    return text;
  }

 private:
  std::uint64_t draw(std::uint64_t n) {
    state_ = state_ * 6364136223846793005U + 1442695040888963407U;
    return (state_ >> 33U) % n;
  }
  std::int64_t one(std::int64_t of) { return static_cast<std::int64_t>(draw(static_cast<std::uint64_t>(of))); }

  std::string otherSigns(const std::string& number) {
    static const std::string signs = " -./";
    const std::uint64_t how = draw(3);
    std::string out;
    for (const char c : number) {
      const bool sign = signs.find(c) != std::string::npos;
      if (!sign) out += how == 1 && c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
      else if (how == 2) out += signs[draw(signs.size())];
      else if (how == 0) out += c;
    }
    return out;
  }

  std::string right() {
    switch (draw(8)) {
      case 0:
      case 1:
      case 2:
        return otherSigns(largeSenderNumber(one(sizes_.senders)));
      case 3:
        return largeCastingNumber(one(sizes_.castings));
      case 4:
        return largeLineName(one(sizes_.lines));
      case 5: {
        const std::int64_t line = one(sizes_.lines);
        return largeMakeName(line % sizes_.makes) + " " + largeLineName(line);
      }
      case 6: {
        static const std::vector<std::string> words{
            "coolant sender stud", "fan switch", "temperature sender", "inline six", "gauge package",
            "blade 6.3",           "1/8 npt",    "family 12"};
        return words[draw(words.size())];
      }
      default:
        return largeSenderNumber(one(sizes_.senders)).substr(2);
    }
  }

  void spoil(std::string& text) {
    const std::size_t at = draw(text.size() - 1);
    switch (draw(4)) {
      case 0:
        text.erase(at, 1);
        break;
      case 1:
        std::swap(text[at], text[at + 1]);
        break;
      case 2:
        text[at] = static_cast<char>('0' + draw(10));
        break;
      default:
        text.insert(at, 1, static_cast<char>('a' + draw(26)));
    }
  }

  LargeSizes sizes_;
  std::uint64_t state_;
};

}  // namespace ohmkin::test
