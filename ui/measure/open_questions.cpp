#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <measure/file_words.h>
#include <measure/open_questions.h>
#include <parts/flow_layout.h>
#include <QVBoxLayout>

namespace ohmkin::measure {

using look::space;

OpenQuestions::OpenQuestions(QWidget* parent) : Panel(Kind::dashed, parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(12), space(16), space(12));
  column->setSpacing(space(6));
  setAccessibleName(tr("What the file leaves open"));
}

void OpenQuestions::display(const std::vector<exchange::PlanQuestion>& questions) {
  answers_.clear();
  while (QLayoutItem* item = layout()->takeAt(0)) {
    // Not at once: it may be a button of these that is being answered.
    if (item->widget() != nullptr) {
      item->widget()->hide();
      item->widget()->deleteLater();
    }
    delete item;
  }
  for (const exchange::PlanQuestion& question : questions) {
    auto* asked = (new parts::Words(desk::plain(question.sentence), this))->sized(look::typeface(look::Text::strong));
    layout()->addWidget(asked);
    auto* row = new QWidget(this);
    auto* line = new parts::FlowLayout(space(8));
    row->setLayout(line);
    for (std::size_t i = 0; i < question.answers.size(); ++i) {
      const QString words = answerWords(question.answers[i]);
      auto* answer = new QPushButton(i == 0 ? tr("%1 (taken for now)").arg(words) : words, row);
      answer->setMinimumHeight(space(32));
      answer->setAccessibleDescription(asked->text());
      connect(answer, &QPushButton::clicked, this,
              [this, given = desk::plain(question.answers[i])] { emit answered(given); });
      line->addWidget(answer);
      answers_.push_back(answer);
    }
    layout()->addWidget(row);
  }
  setVisible(!questions.empty());
}

}  // namespace ohmkin::measure
