#include <exchange/reading_file.h>
#include <exchange/reading_rows.h>
#include <fmt/format.h>
#include <sstream>

namespace ohmkin::exchange {
namespace {

class OneSender : public ReadingSink {
 public:
  explicit OneSender(const std::string& file) : file_(file) {}

  bool row(const ReadingRow& row) override {
    const auto where = [&] { return fmt::format("{}:{}", file_, row.line); };
    if (readings.empty() && overloads_ == 0) curve_ = row.curve;
    if (row.curve != curve_) {
      complaints.add("readings-several-curves", where(),
                     fmt::format("another curve than '{}': '{}'", curve_, row.curve), "the readings of one sender");
      return false;
    }
    if (readings.size() == kMostReadings) {
      complaints.add("readings-too-many", where(), "more than that", fmt::format("at most {} readings", kMostReadings));
      return false;
    }
    if (row.ohms) readings.push_back({row.at, *row.ohms, row.run == Run::cooling});
    else
      ++overloads_, complaints.add("readings-overload", where(), "an overload reading",
                                   "ohms above 0; no curve goes through more than the meter shows");
    return true;
  }
  bool rejected(const RejectedCell& cell) override {
    complaints.add(cell.refusal(file_));
    return true;
  }

  std::vector<FileReading> readings;
  Complaints complaints;

 private:
  const std::string& file_;
  std::string curve_;
  std::size_t overloads_ = 0;
};

/// A question the file leaves open, as a complaint.
Refusal openQuestion(const PlanQuestion& question, const std::string& file) {
  std::string answers;
  for (const std::string& answer : question.answers) answers += (answers.empty() ? "" : " or ") + answer;
  return {question.code, file, fmt::format("something left open ({})", question.sentence),
          "an answer by --map: " +
              (answers.empty() ? "temperature=1:C, resistance=2:ohm, with the columns that are so" : answers)};
}

}  // namespace

tl::expected<std::vector<FileReading>, Complaints> readReadings(std::string_view text, const std::string& file,
                                                                ProposalHints hints) {
  OneSender sender(file);
  const auto complain = [&](Refusal refusal) {
    sender.complaints.add(std::move(refusal));
    return tl::make_unexpected(std::move(sender.complaints));
  };
  if (text.size() > kLargestReadingFile)
    return complain({"readings-too-large", file, fmt::format("{} bytes", text.size()),
                     fmt::format("at most {} bytes", kLargestReadingFile)});
  hints.wholeFile = true;
  const auto proposal = propose(text, file, hints);
  if (!proposal) return complain(proposal.error());
  for (const PlanQuestion& question : proposal->questions) sender.complaints.add(openQuestion(question, file));
  if (!sender.complaints.none()) return tl::make_unexpected(std::move(sender.complaints));
  std::istringstream in{std::string(text)};
  if (const auto read = readRows(in, proposal->plan, file, sender); !read) return complain(read.error());
  if (!sender.complaints.none()) return tl::make_unexpected(std::move(sender.complaints));
  return std::move(sender.readings);
}

}  // namespace ohmkin::exchange
