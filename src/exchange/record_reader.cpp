#include <exchange/reading_plan.h>
#include <exchange/reading_rows.h>
#include <exchange/record_reader.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cstring>

namespace ohmkin::exchange {
namespace {

constexpr std::size_t kFirstPiece = 8U << 10U;      // bytes read at once, at first …
constexpr std::size_t kLargestPiece = 256U << 10U;  // … and in the end
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool blankChar(char c) { return c == ' ' || c == '\t'; }

}  // namespace

bool Record::blank() const {
  return std::all_of(cells.begin(), cells.end(),
                     [](std::string_view cell) { return std::all_of(cell.begin(), cell.end(), blankChar); });
}

RecordReader::RecordReader(TextSource& source, char separator, bool carriageReturns, std::string_view file)
    : source_(source),
      separator_(separator),
      lineBreak_(carriageReturns ? '\r' : '\n'),
      file_(file),
      piece_(kFirstPiece) {
  refill();
  if (std::string_view(text_.data(), text_.size()).starts_with(kByteOrderMark)) begin_ = kByteOrderMark.size();
}

bool RecordReader::refill() {
  text_.erase(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(begin_));
  begin_ = 0;
  if (!source_.more(text_, piece_)) ended_ = true;
  piece_ = std::min(piece_ * 4, kLargestPiece);
  return !ended_;
}

tl::unexpected<Refusal> RecordReader::bad(std::string found, std::string expected, bool withColumn) const {
  const std::string where =
      withColumn ? fmt::format("{}:{}:{}", file_, line_, cells_.size() + 1) : fmt::format("{}:{}", file_, line_);
  return refuse("csv-unreadable", where, std::move(found), std::move(expected));
}

/// Sets end_ to the line break at or behind `from` (relative to begin_); false where the file has ended before begin_.
Expected<bool> RecordReader::lineEnd(std::size_t from) {
  for (;;) {
    const std::size_t start = begin_ + from;
    if (start < text_.size()) {
      if (const void* at = std::memchr(text_.data() + start, lineBreak_, text_.size() - start)) {
        end_ = static_cast<std::size_t>(static_cast<const char*>(at) - text_.data());
        if (end_ - begin_ > kLongestRow) break;
        return true;
      }
    }
    if (text_.size() - begin_ > kLongestRow) break;
    from = text_.size() - begin_;
    if (ended_ || !refill()) {
      if (source_.broken()) {
        cells_.clear();
        return bad(*source_.broken(), "text in one encoding from end to end", false);
      }
      end_ = text_.size();
      return begin_ < text_.size();
    }
  }
  cells_.clear();
  return bad(fmt::format("a row of more than {} bytes", kLongestRow), "rows of bench readings, far shorter than that",
             false);
}

Expected<void> RecordReader::checkText(std::string_view text) const {
  if (text.find('\0') != std::string_view::npos)
    return bad("a NUL byte", "text; this looks like a binary file or another encoding");
  if (const std::size_t at = brokenUtf8At(text); at != std::string_view::npos)
    return bad(fmt::format("the byte {:02X}, which is not UTF-8", static_cast<unsigned char>(text[at])),
               "UTF-8, or the file's encoding named in the plan");
  return {};
}

Expected<void> RecordReader::add(std::size_t begin, std::size_t end, bool doubledQuotes) {
  if (cells_.size() == kMostColumns)
    return bad("more cells than that", fmt::format("at most {} columns", kMostColumns));
  cells_.push_back({begin - begin_, end - begin_, doubledQuotes});
  return {};
}

/// The quote stands at `quote`; returns the place behind the cell's closing quote and the blanks after it. May move
/// text_ about, so that places are to be taken anew from begin_.
Expected<std::size_t> RecordReader::quotedCell(std::size_t quote) {
  const std::size_t opened = quote - begin_;
  std::size_t at = opened + 1;
  bool doubled = false;
  for (;;) {
    while (begin_ + at < end_ && text_[begin_ + at] != '"') ++at;
    if (begin_ + at < end_) {
      const bool twice = begin_ + at + 1 < end_ && text_[begin_ + at + 1] == '"';
      if (!twice) break;
      doubled = true;
      at += 2;
      continue;
    }
    // The line break belongs to the cell.
    if (end_ == text_.size() && ended_) return bad("a double quote that is never closed", "a closing double quote");
    const std::size_t saved = end_ - begin_ + 1;
    const std::vector<CellAt> cells = cells_;
    const auto more = lineEnd(saved);
    cells_ = cells;
    if (!more)
      return bad("a double quote that is never closed, or not within the longest row", "a closing double quote");
    ++breaks_;
  }
  if (const auto added = add(begin_ + opened + 1, begin_ + at, doubled); !added)
    return tl::make_unexpected(added.error());
  ++at;
  while (begin_ + at < end_ && blankChar(text_[begin_ + at]) && text_[begin_ + at] != separator_) ++at;
  const bool lastReturn = begin_ + at + 1 == end_ && text_[begin_ + at] == '\r';
  if (begin_ + at < end_ && text_[begin_ + at] != separator_ && !lastReturn) {
    cells_.pop_back();
    return bad("a double quote out of place", "quotes around a whole cell, and doubled inside it");
  }
  return begin_ + at;
}

Expected<void> RecordReader::cut() {
  unsigned char all = 0;
  bool nul = false;
  std::size_t start = begin_;
  std::size_t at = begin_;
  std::size_t end = end_;
  if (end > begin_ && text_[end - 1] == '\r') --end;
  for (;;) {
    const char* text = text_.data();
    bool quoted = false;
    for (; at < end; ++at) {
      const char c = text[at];
      if (c == separator_) break;
      if (c == '"') {
        quoted = std::all_of(text + start, text + at, blankChar);
        if (quoted) break;
      }
      all = static_cast<unsigned char>(all | static_cast<unsigned char>(c));
      nul = nul || c == '\0';
    }
    if (quoted) {
      const auto behind = quotedCell(at);
      if (!behind) return tl::make_unexpected(behind.error());
      at = *behind;
      end = end_;
      if (end > at && text_[end - 1] == '\r') --end;
      all = 0x80U;  // what stood in the quotes has not been looked at
    } else if (const auto added = add(start, at, false); !added) {
      return tl::make_unexpected(added.error());
    }
    if (at >= end) break;
    start = ++at;
  }
  if (all >= 0x80U || nul) return checkText({text_.data() + begin_, end_ - begin_});
  return {};
}

Expected<void> RecordReader::cutAtBlanks() {
  std::size_t end = end_;
  if (end > begin_ && text_[end - 1] == '\r') --end;
  for (std::size_t at = begin_; at < end;) {
    while (at < end && blankChar(text_[at])) ++at;
    const std::size_t start = at;
    while (at < end && !blankChar(text_[at])) ++at;
    if (at == start) break;
    if (const auto added = add(start, at, false); !added) return added;
  }
  return checkText({text_.data() + begin_, end_ - begin_});
}

void RecordReader::handOver(Record& record) {
  record.line = line_;
  record.cells.clear();
  char* text = text_.data() + begin_;
  for (const CellAt& cell : cells_) {
    std::size_t length = cell.end - cell.begin;
    if (cell.doubledQuotes) {
      char* to = text + cell.begin;
      for (std::size_t i = cell.begin; i < cell.end; ++i) {
        *to++ = text[i];
        if (text[i] == '"') ++i;
      }
      length = static_cast<std::size_t>(to - (text + cell.begin));
    }
    record.cells.emplace_back(text + cell.begin, length);
  }
  record.text = {text, end_ - begin_};
  if (record.text.ends_with('\r')) record.text.remove_suffix(1);
  line_ += 1 + breaks_;
  begin_ = std::min(end_ + 1, text_.size());
}

Expected<bool> RecordReader::next(Record& record) {
  cells_.clear();
  breaks_ = 0;
  const auto line = lineEnd(0);
  if (!line) return line;
  if (!*line) return false;
  if (const auto done = separator_ == ' ' ? cutAtBlanks() : cut(); !done) return tl::make_unexpected(done.error());
  handOver(record);
  return true;
}

Expected<bool> RecordReader::nextLine(Record& record) {
  cells_.clear();
  breaks_ = 0;
  const auto line = lineEnd(0);
  if (!line) return line;
  if (!*line) return false;
  if (const auto sound = checkText({text_.data() + begin_, end_ - begin_}); !sound)
    return tl::make_unexpected(sound.error());
  cells_.push_back({0, end_ - begin_, false});
  handOver(record);
  return true;
}

}  // namespace ohmkin::exchange
