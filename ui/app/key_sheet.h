#pragma once
#include <app/action_rows.h>
#include <app/overlay.h>
#include <parts/entry.h>
#include <QHBoxLayout>
#include <QPushButton>

namespace ohmkin::app {

/// Every key there is, in groups, each a list that can be walked; what is typed above leaves what answers to it.
class KeySheet : public Overlay {
  Q_OBJECT

 public:
  explicit KeySheet(QWidget& window);
  void offer(const std::vector<Offered>& all);
  [[nodiscard]] QString asText() const;
  [[nodiscard]] parts::Entry& box() const { return *box_; }
  [[nodiscard]] QPushButton& copy() const { return *copy_; }

 protected:
  [[nodiscard]] QRect place(const QSize& window) const override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  struct Group {
    QWidget* whole;
    ActionRows* rows;
    std::vector<Offered> all;
  };
  void addGroup(const QString& title, std::vector<Offered> rows);
  void filter();
  /// Groups into as many columns as have room, each to where the least stands.
  void arrange();

  parts::Entry* box_;
  QPushButton* copy_;
  QWidget* inner_;
  QHBoxLayout* columns_;
  parts::Words* none_;
  std::vector<Group> groups_;
};

}  // namespace ohmkin::app
