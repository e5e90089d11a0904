#include <fmt/format.h>
#include <sheet/book.h>
#include <sheet/job_sheet.h>

namespace ohmkin::sheet {

Pages drawJobSheet(const JobSheet& job, Paper paper) {
  Book book(sizeOf(paper), {"JOB SHEET · " + job.number, job.reference, job.date});
  book.skip(4);
  if (!job.asked.empty()) {
    book.part("WHAT WAS ASKED");
    for (const auto& [name, value] : job.asked) book.paragraph(kBody, fmt::format("{}: {}", name, value));
  }
  book.part("WHAT WAS FITTED");
  book.skip(2.5);  // type so large would touch the rule
  book.paragraph(kTitle, job.fitted.empty() ? "Nothing yet" : job.fitted);
  if (!job.needle.empty()) book.paragraph(kLead, job.needle);
  if (!job.card.empty()) {
    book.part("OFFSET CARD: WHAT THE NEEDLE SHOWS", 30);
    book.table({{"COOLANT", 40, Anchor::end, Weight::regular},
                {"NEEDLE SHOWS", 60, Anchor::end, Weight::bold},
                {"ERROR", 40, Anchor::end, Weight::regular}},
               job.card);
  }
  if (!job.notes.empty()) {
    book.part("NOTES");
    for (const std::string& note : job.notes) book.paragraph(kBody, note);
  }
  if (!job.sources.empty()) {
    book.part("WHERE THIS IS KNOWN FROM");
    for (const std::string& source : job.sources) book.item("·", source);
  }
  book.cautions(job.cautions);
  return book.finish(job.following);
}

}  // namespace ohmkin::sheet
