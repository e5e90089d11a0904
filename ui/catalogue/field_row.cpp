#include <catalogue/field_row.h>
#include <catalogue/field_words.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/words.h>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

namespace ohmkin::shelves {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

FieldRow::FieldRow(const workflow::EditField& field, QWidget* parent)
    : QWidget(parent),
      field_(field),
      label_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      wrong_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::warning)) {
  const QString name = desk::plain(field.label);
  label_->setText(field.required ? tr("%1 *").arg(name) : name);
  const QString spoken = field.required ? tr("%1, must be said").arg(name) : name;
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(3));
  column->addWidget(label_);
  const QStringList choices = choicesOf(field);
  if (!choices.isEmpty()) {
    choice_ = new parts::Choice(spoken, this);
    choice_->addItems(choices);
    connect(choice_, &QComboBox::currentIndexChanged, this, [this] {
      touched_ = true;
      emit changed();
    });
  } else {
    entry_ = new parts::Entry(spoken, this);
    entry_->setPlaceholderText(hintOf(field));
    connect(entry_, &QLineEdit::textChanged, this, [this] {
      touched_ = true;
      emit changed();
    });
    if (!field.refersTo.empty()) {
      names_ = new parts::Suggestions(*entry_);
      connect(names_, &parts::Suggestions::asked, this, &FieldRow::namesAsked);
    }
  }
  editor()->setToolTip(parts::plainTip(helpOf(field)));
  column->addWidget(editor());
  column->addWidget(wrong_);
  column->addStretch(1);
  wrong_->hide();
}

QWidget* FieldRow::editor() const { return choice_ != nullptr ? static_cast<QWidget*>(choice_) : entry_; }

QString FieldRow::text() const { return choice_ != nullptr ? choice_->currentText() : entry_->text().trimmed(); }

void FieldRow::setText(const QString& text) {
  const QSignalBlocker quiet(editor());
  if (entry_ != nullptr) {
    entry_->setText(text);
    entry_->setCursorPosition(0);
  } else {
    int at = choice_->findText(text);
    if (at < 0) {  // what the catalogue holds is shown, whatever is offered
      choice_->insertItem(0, text);
      at = 0;
    }
    choice_->setCurrentIndex(at);
  }
  touched_ = false;
  setWrong({});
}

void FieldRow::setWrong(const QString& sentence) {
  if (entry_ != nullptr) entry_->setWrong(!sentence.isEmpty());
  editor()->setAccessibleDescription(sentence.isEmpty() ? helpOf(field_) : sentence);
  wrong_->setText(sentence);
  wrong_->setVisible(!sentence.isEmpty());
}

void FieldRow::takeKeyboard() {
  editor()->setFocus(Qt::OtherFocusReason);
  if (entry_ != nullptr) entry_->selectAll();
}

bool FieldRow::wide() const {
  static constexpr std::array<std::string_view, 7> kLong{"citation", "note",         "look",      "tell",
                                                         "also",     "coefficients", "covariance"};
  return std::find(kLong.begin(), kLong.end(), field_.name) != kLong.end();
}

void FieldRow::offer(const QString& forText, const std::vector<parts::NameWords>& names) {
  if (names_ != nullptr) names_->offer(forText, names);
}

}  // namespace ohmkin::shelves
