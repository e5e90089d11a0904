#pragma once
#include <desk/catalogue_thread.h>
#include <desk/settings.h>
#include <measure/set_up.h>
#include <measure/shop.h>
#include <parts/chip_row.h>
#include <parts/finding_list.h>
#include <workflow/bench_work.h>

namespace ohmkin::measure {

/// A cold sender at the counter: ohms at room temperature, and which families remain.
class QuickDesk : public QWidget {
  Q_OBJECT

 public:
  QuickDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent = nullptr);
  void setShop(const SharedShop& shop);
  void takeKeyboard() { ohms_->setFocus(Qt::ShortcutFocusReason); }
  [[nodiscard]] QString asText() const;
  [[nodiscard]] parts::Entry& ohmsEntry() const { return *ohms_; }
  [[nodiscard]] parts::Entry& room() const { return *room_; }
  [[nodiscard]] parts::ChipRow& remaining() const { return *remain_; }
  [[nodiscard]] QString said() const { return said_->text(); }

 private:
  void asked();
  void display(const bench::QuickCheck& check);
  void refuse(const QString& sentence);

  desk::CatalogueThread& thread_;
  desk::Settings& settings_;
  SharedShop shop_;
  parts::Entry* ohms_;
  parts::Entry* room_;
  parts::Choice* known_;
  parts::Words* said_;
  parts::ChipRow* remain_;
  parts::FindingList* findings_;
  parts::Panel* answer_ = nullptr;
};

}  // namespace ohmkin::measure
