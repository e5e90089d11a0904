#pragma once
#include <desk/page.h>
#include <measure/file_desk.h>
#include <measure/hand_desk.h>
#include <measure/import_list.h>
#include <measure/quick_desk.h>
#include <parts/segmented.h>

namespace ohmkin::measure {

/// The bench: readings by hand, a cold sender at the counter, files of readings, and what is kept of them.
class BenchPage : public desk::Page {
  Q_OBJECT

 public:
  enum Part { byHand, atCounter, fromFile, kept };

  explicit BenchPage(desk::Settings& settings, QWidget* parent = nullptr);
  ~BenchPage() override;
  BenchPage(const BenchPage&) = delete;
  BenchPage& operator=(const BenchPage&) = delete;
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override;
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override;
  void takeFile(const QString& file) override;

  [[nodiscard]] HandDesk& hand() const { return *hand_; }
  [[nodiscard]] QuickDesk& counter() const { return *counter_; }
  [[nodiscard]] FileDesk& file() const { return *fileDesk_; }
  [[nodiscard]] ImportList& imports() const { return *imports_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *whole_; }
  [[nodiscard]] bool ready() const { return stack_->currentIndex() == 1; }
  void showPart(Part part) { parts_->choose(part); }

 private:
  void wire();
  void readShop();
  void forget(const std::optional<Refusal>& whyNot);

  desk::Settings& settings_;
  desk::CatalogueThread handThread_;
  desk::CatalogueThread fileThread_;
  QString file_;
  QString waiting_;  ///< dropped before the catalogue was open

  parts::BlankSheet* whole_;
  QStackedWidget* stack_;
  parts::Segmented* parts_;
  QStackedWidget* desks_;
  HandDesk* hand_;
  QuickDesk* counter_;
  FileDesk* fileDesk_;
  ImportList* imports_;
};

}  // namespace ohmkin::measure
