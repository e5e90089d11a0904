#include <fault/answer_list.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHBoxLayout>

namespace ohmkin::fault {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

QPushButton* smallButton(const QString& words, QWidget* parent) {
  auto* button = new QPushButton(words, parent);
  button->setFont(typeface(Text::small));
  button->setMinimumSize(space(64), space(28));
  button->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  return button;
}

}  // namespace

AnswerList::AnswerList(QWidget* parent) : QWidget(parent), column_(new QVBoxLayout(this)) {
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(space(8));
  setAccessibleName(tr("Answered so far"));
}

void AnswerList::addRow() {
  Shown row;
  row.whole = new QWidget(this);
  row.question = (new parts::Words({}, row.whole))->sized(typeface(Text::small))->painted(Paint::quiet);
  row.answer = (new parts::Words({}, row.whole))->selectable();
  row.change = smallButton(tr("Change"), row.whole);
  row.takeBack = smallButton(tr("Take back"), row.whole);
  auto* words = new QVBoxLayout;
  words->setSpacing(0);
  words->addWidget(row.question);
  words->addWidget(row.answer);
  auto* line = new QHBoxLayout(row.whole);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(space(6));
  line->addLayout(words, 1);
  line->addWidget(row.change, 0, Qt::AlignVCenter);
  line->addWidget(row.takeBack, 0, Qt::AlignVCenter);
  column_->addWidget(row.whole);
  const auto at = static_cast<int>(shown_.size());
  connect(row.change, &QPushButton::clicked, this, [this, at] { emit changeRequested(at); });
  connect(row.takeBack, &QPushButton::clicked, this, [this, at] { emit takenBack(at); });
  shown_.push_back(row);
}

void AnswerList::display(const std::vector<AnswerRow>& rows) {
  rows_ = rows;
  while (shown_.size() < rows.size()) addRow();
  for (std::size_t i = 0; i < shown_.size(); ++i) {
    const bool there = i < rows.size();
    shown_[i].whole->setVisible(there);
    if (!there) continue;
    const AnswerRow& row = rows[i];
    shown_[i].question->setText(row.question);
    shown_[i].answer->setText(row.misfit ? tr("%1 (does not fit the rest)").arg(row.answer) : row.answer);
    shown_[i].answer->painted(row.misfit ? Paint::warning : Paint::ink);
    shown_[i].change->setVisible(row.kind != AnswerRow::Kind::repair);
    shown_[i].change->setAccessibleName(tr("Change the answer to: %1").arg(row.question));
    shown_[i].takeBack->setAccessibleName(tr("Take back the answer to: %1").arg(row.question));
  }
}

QPushButton* AnswerList::changeButton(std::size_t row) const {
  return row < rows_.size() && rows_[row].kind != AnswerRow::Kind::repair ? shown_[row].change : nullptr;
}

QPushButton* AnswerList::takeBackButton(std::size_t row) const {
  return row < rows_.size() ? shown_[row].takeBack : nullptr;
}

}  // namespace ohmkin::fault
