#pragma once
#include <QHash>
#include <QScrollArea>
#include <vector>

/// Why a sender was judged as it was: sentence, evidence and source of each finding.
namespace ohmkin::parts {

enum class Weight { note, caution, warning, refusal };

struct FindingWords {
  QString topic;  ///< over the first of several that belong together: "Thread"
  QString sentence;
  QString evidence;
  QString source;
  Weight weight = Weight::note;
};

class FindingList : public QScrollArea {
  Q_OBJECT

 public:
  explicit FindingList(QWidget* parent = nullptr);
  void display(const std::vector<FindingWords>& findings);
  void showTopic(const QString& topic);  ///< scrolls there, where the topic is in the list
  [[nodiscard]] const std::vector<FindingWords>& findings() const { return findings_; }
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<FindingWords> findings_;
  QHash<QString, QWidget*> topics_;
};

}  // namespace ohmkin::parts
