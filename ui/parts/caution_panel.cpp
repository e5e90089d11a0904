#include <look/type.h>
#include <parts/caution_panel.h>

namespace ohmkin::parts {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

CautionPanel::CautionPanel(QWidget* parent)
    : Panel(Kind::caution, parent),
      first_((new Words({}, this))->sized(typeface(Text::strong))->painted(Paint::warning)),
      rest_((new Words({}, this))->sized(typeface(Text::small))) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(10), space(16), space(10));
  column->setSpacing(space(2));
  column->addWidget(first_);
  column->addWidget(rest_);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
  setAccessibleName(tr("Cautions"));
}

void CautionPanel::display(const QStringList& cautions) {
  if (cautions.isEmpty() || cautions == cautions_) return;
  cautions_ = cautions;
  first_->setText(cautions.front());
  rest_->setText(cautions.mid(1).join(QLatin1Char(' ')));
  rest_->setVisible(cautions.size() > 1);
  setAccessibleDescription(cautions.join(QLatin1Char(' ')));
  updateGeometry();
}

}  // namespace ohmkin::parts
