#include <desk/catalogue_thread.h>
#include <measure/answer_words.h>
#include <measure/curve_picture.h>
#include <measure/file_words.h>
#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

namespace ohmkin::measure {
namespace {

using desk::plain;
using desk::shown;
using workflow::ImportPreview;
using workflow::RunPreview;

QString tr(const char* text) { return QCoreApplication::translate("FileWords", text); }

QString counted(std::uint64_t count, const QString& one, const QString& many) {
  return QStringLiteral("%1 %2").arg(QLocale().toString(static_cast<qulonglong>(count)), count == 1 ? one : many);
}

}  // namespace

QString whenWords(const std::string& utc) {
  QDateTime at = QDateTime::fromString(plain(utc), Qt::ISODate);
  if (!at.isValid()) return plain(utc);
  at.setTimeSpec(Qt::UTC);
  return QLocale().toString(at.toLocalTime(), QStringLiteral("d MMM yyyy, HH:mm"));
}

QString fileSentence(const ImportPreview& preview) {
  QString words = tr("%1 in %2")
                      .arg(counted(preview.tally.rows, tr("reading"), tr("readings")),
                           counted(preview.runs.size(), tr("curve"), tr("curves")));
  QStringList more;
  if (preview.tally.overloads > 0)
    more << tr("%1 overload").arg(QLocale().toString(static_cast<qulonglong>(preview.tally.overloads)));
  if (preview.tally.rejected > 0)
    more << tr("%1 could not be read").arg(counted(preview.tally.rejected, tr("cell"), tr("cells")));
  return more.isEmpty() ? words : words + QStringLiteral("; ") + more.join(QStringLiteral("; "));
}

std::vector<parts::ChipWords> readingChips(const ImportPreview& preview) {
  std::vector<parts::ChipWords> chips;
  if (preview.remembered)
    chips.push_back({preview.remembered->logger.empty()
                         ? tr("read as such files were put right before")
                         : tr("read as files of %1 were put right before").arg(plain(preview.remembered->logger)),
                     parts::ChipKind::understood});
  for (const Finding& finding : preview.proposal.findings)
    chips.push_back({shown(finding.sentence),
                     finding.severity == Severity::note ? parts::ChipKind::inferred : parts::ChipKind::conflict});
  return chips;
}

QString alreadyWords(const ImportPreview& preview) {
  if (!preview.already) return {};
  const catalog::ImportRecord& record = *preview.already;
  return tr("This very file is in already: imported on %1%2, as import %3. Bringing it in again would change nothing.")
      .arg(whenWords(record.at), record.who.empty() ? QString() : tr(" by %1").arg(plain(record.who)))
      .arg(record.id.value);
}

std::vector<parts::FindingWords> runRemarks(const ImportPreview& preview, std::size_t run, const DisplayUnits& units) {
  parts::Remarks remarks;
  if (run < preview.runs.size()) {
    const RunPreview& each = preview.runs[run];
    std::vector<Finding> fit;
    if (const QString words = fitWords(each.fit, each.noFit, units); !words.isEmpty())
      fit.push_back({"fit", each.fit ? Severity::note : Severity::caution, words.toStdString(), {}, {}});
    if (!each.reducedBy.empty()) fit.push_back({"reduced", Severity::note, each.reducedBy, {}, {}});
    remarks.add(tr("The curve"), fit);
    if (each.fit) {
      std::vector<Finding> outliers;
      for (const curve::Outlier& outlier : each.fit->outliers)
        outliers.push_back({"outlier", Severity::caution, outlier.reason, {}, {}});
      remarks.add(tr("Readings that do not belong"), outliers);
    }
    remarks.add(tr("This curve"), each.findings);
    if (each.whose) remarks.add(tr("Whose curve it is"), each.whose->findings);
  }
  remarks.add(tr("The file"), preview.findings);
  return remarks.take();
}

QString answerWords(const std::string& answer) {
  static const std::vector<std::pair<QString, QString>> roles{{QStringLiteral("temperature"), tr("the temperature")},
                                                              {QStringLiteral("resistance"), tr("a resistance")},
                                                              {QStringLiteral("time"), tr("the time")},
                                                              {QStringLiteral("curve"), tr("which curve")},
                                                              {QStringLiteral("direction"), tr("heating or cooling")},
                                                              {QStringLiteral("ignore"), tr("not used")}};
  static const std::vector<std::pair<QString, QString>> units{
      {QStringLiteral("C"), QStringLiteral("°C")},    {QStringLiteral("F"), QStringLiteral("°F")},
      {QStringLiteral("K"), QStringLiteral("K")},     {QStringLiteral("ohm"), QStringLiteral("Ω")},
      {QStringLiteral("kohm"), QStringLiteral("kΩ")}, {QStringLiteral("Mohm"), QStringLiteral("MΩ")},
      {QStringLiteral("ymd"), tr("year first")},      {QStringLiteral("dmy"), tr("day first")},
      {QStringLiteral("mdy"), tr("month first")}};
  QStringList words;
  for (const QString& part : plain(answer).split(QLatin1Char(','))) {
    const QString key = part.section(QLatin1Char('='), 0, 0).trimmed();
    const QString value = part.section(QLatin1Char('='), 1).trimmed();
    QString said;
    for (const auto& [role, name] : roles)
      if (role == key) {
        QString unit = value.section(QLatin1Char(':'), 1);
        for (const auto& [code, shownAs] : units)
          if (code == unit) unit = shownAs;
        said = tr("column %1 is %2").arg(value.section(QLatin1Char(':'), 0, 0), name) +
               (unit.isEmpty() ? QString() : QStringLiteral(", ") + unit);
      }
    if (said.isEmpty()) said = value.isEmpty() ? part.trimmed() : QStringLiteral("%1: %2").arg(key, value);
    words << said;
  }
  return words.join(QStringLiteral("; "));
}

QString previewAsText(const ImportPreview& preview, const workflow::BenchFamilies& families,
                      const DisplayUnits& units) {
  QStringList lines{QStringLiteral("%1: %2").arg(plain(preview.file), fileSentence(preview))};
  for (const RunPreview& run : preview.runs) {
    lines << QString() << (run.title.empty() ? tr("the file's only curve") : plain(run.title));
    if (const QString fit = fitWords(run.fit, run.noFit, units); !fit.isEmpty()) lines << QStringLiteral("  ") + fit;
    if (run.whose)
      for (const SuspectRow& row : suspectsOf(families, *run.whose, run.claimed))
        lines << QStringLiteral("  %1: %2").arg(row.name, chanceWords(row.chance));
  }
  for (const exchange::RejectedCell& cell : preview.rejected) lines << plain(cell.refusal(preview.file).sentence());
  return lines.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::measure
