#include <catalogue/catalogue_page.h>
#include <catalogue/lanes.h>
#include <desk/catalogue_thread.h>
#include <QKeyEvent>

/// The page while somebody types in its box.
namespace ohmkin::shelves {

using desk::shown;

namespace {

constexpr std::size_t kFoundAtOnce = 40;

std::vector<FoundRow> rowsOf(const std::vector<workflow::Found>& found) {
  std::vector<FoundRow> rows;
  rows.reserve(found.size());
  for (const workflow::Found& each : found) rows.push_back(rowOf(each));
  return rows;
}

}  // namespace

void CataloguePage::asked(const QString& text) {
  if (file_.isEmpty()) return;
  if (desks_->currentIndex() != find) parts_->choose(find);
  tell({}, false);
  if (text.trimmed().isEmpty()) {
    finder_.drop(finding);
    finder_.drop(moreFound);
    displayNothingTyped();
    return;
  }
  finder_.drop(moreFound);
  finder_.ask(finding,
              [this, question = text.toStdString()](OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
                auto answer = open.finder().find({question, {}, kFoundAtOnce, {}}, stop);
                if (!answer && answer.error().code == "cancelled") return {};
                return [this, answer = std::move(answer)] {
                  if (answer) display(*answer);
                  else hint_->setText(desk::refusalSentence(answer.error()));
                };
              });
}

void CataloguePage::askMore() {
  if (next_.empty()) return;
  finder_.ask(moreFound,
              [this, question = query_->text().toStdString(), after = std::exchange(next_, {})](
                  OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
                auto answer = open.finder().find({question, {}, kFoundAtOnce, after}, stop);
                if (!answer) return {};
                return [this, answer = std::move(*answer)] {
                  next_ = answer.next;
                  found_->addRows(rowsOf(answer.found));
                };
              });
}

void CataloguePage::display(const workflow::FindAnswer& answer) {
  std::vector<FoundRow> rows = rowsOf(answer.found);
  next_ = answer.next;
  total_ = answer.total;
  QStringList words;
  if (!rows.empty()) words << tr("%n found, best first", nullptr, static_cast<int>(answer.total));
  for (const Finding& finding : answer.findings) words << shown(finding.sentence);
  if (rows.empty() && words.isEmpty()) words << tr("Nothing is known by that.");
  hint_->setText(words.join(QLatin1Char('\n')));
  found_->setVisible(!rows.empty());
  found_->setRows(std::move(rows));
}

void CataloguePage::displayNothingTyped() {
  next_.clear();
  {
    const QSignalBlocker quiet(found_);  // what is looked at stays
    found_->hide();
    found_->setRows({});
  }
  if (things_ == 0)
    hint_->setText(
        tr("This catalogue is empty. Load a pack into it, or press Ctrl+N to make its first row: begin with "
           "a source."));
  else
    hint_->setText(
        tr("Type any number or name, with or without dashes and blanks: one letter may be wrong. The arrow "
           "keys go along what is found, Enter opens it.\n\nCtrl+N makes something new."));
}

bool CataloguePage::eventFilter(QObject* watched, QEvent* event) {
  if (watched != query_->edit() || event->type() != QEvent::KeyPress) return Page::eventFilter(watched, event);
  switch (static_cast<QKeyEvent*>(event)->key()) {  // NOLINT: the type was looked at
    case Qt::Key_Down:
      found_->step(1);
      return true;
    case Qt::Key_Up:
      found_->step(-1);
      return true;
    case Qt::Key_PageDown:
      if (static_cast<QKeyEvent*>(event)->modifiers() != Qt::NoModifier) break;  // NOLINT
      found_->stepPage(1);
      return true;
    case Qt::Key_PageUp:
      if (static_cast<QKeyEvent*>(event)->modifiers() != Qt::NoModifier) break;  // NOLINT
      found_->stepPage(-1);
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (found_->currentIndex().isValid()) emit found_->opened();
      return true;
    default:
      break;
  }
  return Page::eventFilter(watched, event);
}

void CataloguePage::countRows() {
  clerk_.ask(counting, [this](OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
    std::int64_t all = 0;
    for (const workflow::EditKind& kind : workflow::editKinds()) {
      if (stop.stop_requested()) return {};
      all = workflow::countRows(open.catalogue(), kind.name);
      if (all > 0) break;  // whether it is empty is all that is asked
    }
    return [this, all] {
      things_ = all;
      if (query_->text().trimmed().isEmpty()) displayNothingTyped();
    };
  });
}

}  // namespace ohmkin::shelves
