#include <circuit/faults.h>
#include <desk/catalogue_thread.h>
#include <jobs/document_words.h>
#include <workflow/fault_document.h>
#include <QCoreApplication>
#include <QDateTime>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocale>
#include <cmath>

namespace ohmkin::jobs {
namespace {

using desk::plain;
using desk::shown;
using Mark = DocumentWords::Mark;

constexpr double kOnTime = 0.05;  // K, as the comparison with today's answer has it

QString tr(const char* text) { return QCoreApplication::translate("jobs", text); }

QString nameOf(catalog::DocumentKind kind) {
  switch (kind) {
    case catalog::DocumentKind::match:
      return tr("Answer");
    case catalog::DocumentKind::pair:
      return tr("Pair");
    case catalog::DocumentKind::trim:
      return tr("Trim");
    case catalog::DocumentKind::plan:
      return tr("Swap plan");
    case catalog::DocumentKind::date:
      return tr("Engine date");
    case catalog::DocumentKind::fault:
      return tr("Search for a fault");
    case catalog::DocumentKind::benchRun:
      return tr("Bench curve");
    case catalog::DocumentKind::attachment:
      return tr("File");
    case catalog::DocumentKind::other:
      break;
  }
  return tr("Document");
}

QString amount(double kelvin, const DisplayUnits& units) {
  return shown(printAmount(kelvins(std::abs(kelvin)), units, 1));
}

/// How late the needle comes to the hot mark: the one number that can boil an engine.
QString hotLine(const QJsonObject& errors, const DisplayUnits& units) {
  const QJsonObject hot = errors[QLatin1String("hot_mark")].toObject();
  const QString reaches = hot[QLatin1String("reaches")].toString();
  if (reaches == QLatin1String("yes")) {
    const double late = hot[QLatin1String("late_k")].toDouble();
    if (std::abs(late) < kOnTime) return tr("At the hot mark: on time.");
    return (late > 0 ? tr("At the hot mark: %1 late.") : tr("At the hot mark: %1 early.")).arg(amount(late, units));
  }
  if (reaches == QLatin1String("never"))
    return tr("The hot mark is never reached: at least %1 late.")
        .arg(amount(hot[QLatin1String("at_least_late_k")].toDouble(), units));
  if (reaches == QLatin1String("past-already"))
    return tr("The hot mark is passed too soon: at least %1 early.")
        .arg(amount(hot[QLatin1String("at_least_early_k")].toDouble(), units));
  return {};
}

QStringList texts(const QJsonArray& array) {
  QStringList all;
  for (const auto each : array)
    all << (each.isObject() ? each.toObject()[QLatin1String("text")].toString() : each.toString());
  all.removeAll(QString());
  return all;
}

QJsonObject recommended(const QJsonArray& senders) {
  for (const auto each : senders)
    if (each.toObject()[QLatin1String("recommended")].toBool()) return each.toObject();
  return {};
}

void wordMatch(const QJsonObject& json, const DisplayUnits& units, DocumentWords& words) {
  const QJsonArray branches = json[QLatin1String("branches")].toArray();
  const QJsonObject branch = branches.first().toObject();
  const QJsonObject sender = recommended(branch[QLatin1String("senders")].toArray());
  if (sender.isEmpty()) {
    words.mark = branches.isEmpty() ? Mark::look : Mark::cut;
    words.headline = tr("No sender recommended");
    words.sentence.clear();
  } else {
    const QJsonArray needed = sender[QLatin1String("parts_needed")].toArray();
    const QString rank = sender[QLatin1String("rank")].toString();
    words.mark = needed.isEmpty() ? Mark::fits : Mark::withPart;
    words.headline = sender[QLatin1String("part")].toString();
    words.sentence = shown(sender[QLatin1String("sentence")].toString().toStdString());
    if (!needed.isEmpty()) words.lines << tr("With it: %1.").arg(texts(needed).join(QStringLiteral(", ")));
    const QJsonObject trim = sender[QLatin1String("trim")].toObject();
    const bool trimmed = rank.contains(QLatin1String("trim")) && trim[QLatin1String("after")].isObject();
    if (trimmed) {
      words.mark = Mark::withPart;
      words.lines << tr("Trim: %1.").arg(trim[QLatin1String("network")].toObject()[QLatin1String("name")].toString());
    }
    const QString hot =
        hotLine((trimmed ? trim[QLatin1String("after")] : sender[QLatin1String("errors")]).toObject(), units);
    if (!hot.isEmpty()) words.lines << hot;
  }
  const QString assumes = branch[QLatin1String("assumes")].toString();
  if (!assumes.isEmpty()) words.lines << tr("Holds for: %1.").arg(assumes);
  const QStringList understood = texts(json[QLatin1String("understood")].toArray());
  if (!understood.isEmpty()) words.lines << tr("Asked: %1.").arg(understood.join(QStringLiteral(" · ")));
}

void wordPlan(const QJsonObject& json, DocumentWords& words) {
  words.headline = words.sentence;
  words.sentence.clear();
  for (const auto each : json[QLatin1String("cells")].toArray()) {
    const QJsonObject cell = each.toObject();
    words.lines << tr("%1 with %2: %3 %4")
                       .arg(cell[QLatin1String("dash")].toString(), cell[QLatin1String("engine")].toString(),
                            cell[QLatin1String("part")].toString(), cell[QLatin1String("sentence")].toString())
                       .simplified();
    if (words.lines.size() == 12) break;
  }
  const QStringList buy = texts(json[QLatin1String("parts_to_buy")].toArray());
  if (!buy.isEmpty()) words.lines << tr("To buy: %1.").arg(buy.join(QStringLiteral(", ")));
}

QString spaced(const std::string& code) { return plain(code).replace(QLatin1Char('-'), QLatin1Char(' ')); }

void wordFault(const std::string& text, DocumentWords& words) {
  const auto session = workflow::readFaultDocument(text, {});
  if (!session) return;
  words.headline = plain(session->question.gauge);
  if (session->symptom)
    words.sentence = tr("It %1.").arg(QString::fromUtf8(circuit::symptomName(*session->symptom).data()));
  const auto book = circuit::usualFaults();
  for (const auto& seen : session->seen)
    words.lines << tr("%1: %2.").arg(spaced(seen.test), seen.outcome.empty() ? tr("not sure") : spaced(seen.outcome));
  for (const std::string& tried : session->tried) words.lines << tr("Did not help: %1.").arg(spaced(tried));
  if (!session->helped.empty()) words.lines << tr("What helped: %1.").arg(spaced(session->helped));
  if (session->cause.empty() || !book) return;
  const auto at = book->faultWith(session->cause);
  words.lines << tr("Found: %1.").arg(at ? plain(book->faults[*at].name) : spaced(session->cause));
}

void wordAttachment(const QJsonObject& json, const workflow::KeptDocument& document, DocumentWords& words) {
  words.headline = words.sentence;
  const QString path = json[QLatin1String("path")].toString();
  words.sentence = QFileInfo(path).absolutePath();
  if (!document.attachment) return;
  switch (*document.attachment) {
    case workflow::AttachmentState::asKept:
      words.lines << tr("It is there, as it was.");
      break;
    case workflow::AttachmentState::missing:
    case workflow::AttachmentState::changed:
    case workflow::AttachmentState::unreadable:
      words.warning = plain(document.attachmentWords);
      break;
  }
}

}  // namespace

QString dayOf(const std::string& moment) {
  const QDateTime at = QDateTime::fromString(plain(moment), Qt::ISODate);
  return at.isValid() ? QLocale().toString(at.toLocalTime().date(), QStringLiteral("d MMM yyyy")) : QString();
}

DocumentWords wordsOf(const workflow::KeptDocument& document, const DisplayUnits& units) {
  const catalog::JobDocument& kept = document.kept;
  DocumentWords words;
  words.kind = nameOf(kept.kind);
  words.made = kept.madeBy.empty() ? dayOf(kept.made) : tr("%1, by %2").arg(dayOf(kept.made), plain(kept.madeBy));
  words.sentence = shown(kept.title);
  if (!document.asWritten) {
    words.warning = tr("This is no longer as it was written: its bytes differ. It is not shown.");
    return words;
  }
  const QJsonObject json = QJsonDocument::fromJson(QByteArray::fromStdString(kept.document)).object();
  if (kept.kind == catalog::DocumentKind::match) wordMatch(json, units, words);
  else if (kept.kind == catalog::DocumentKind::plan) wordPlan(json, words);
  else if (kept.kind == catalog::DocumentKind::fault) wordFault(kept.document, words);
  else if (kept.kind == catalog::DocumentKind::attachment) wordAttachment(json, document, words);
  else words.headline = plain(kept.part);
  return words;
}

}  // namespace ohmkin::jobs
