#pragma once
#include <jobs/document_words.h>
#include <parts/panel.h>
#include <QHBoxLayout>
#include <QPushButton>

namespace ohmkin::jobs {

/// Something kept with a job, as it was then.
class DocumentCard : public parts::Panel {
  Q_OBJECT

 public:
  explicit DocumentCard(const DocumentWords& words, QWidget* parent);
  /// What is said of it today; `differs`: as a warning.
  void sayToday(const QString& sentence, const QStringList& because, bool differs);
  [[nodiscard]] QString today() const { return today_->text(); }
  [[nodiscard]] QString said() const { return said_; }
  /// "Go on with it": there where another page can.
  QPushButton& offerToGoOn();
  [[nodiscard]] QPushButton& remove() const { return *remove_; }

 private:
  QString said_;
  parts::Words* today_;
  parts::Words* because_;
  QPushButton* remove_;
  QHBoxLayout* head_;
};

}  // namespace ohmkin::jobs
