#pragma once
#include <parts/entry.h>
#include <QCompleter>
#include <QStandardItemModel>
#include <vector>

/// Names offered under an entry as it is typed: whatever holds the letters typed, in the name or beside it.
namespace ohmkin::parts {

struct NameWords {
  QString name;   ///< what is put into the entry
  QString aside;  ///< beside it in the list: "gauge GA-1, family A"
  friend bool operator==(const NameWords&, const NameWords&) = default;
};

/// Replaces what was offered before.
void offerNames(Entry& entry, const std::vector<NameWords>& names);

/// The same for names that are too many to be held: they are asked for at each key and offered when they have come.
class Suggestions : public QObject {
  Q_OBJECT

 public:
  explicit Suggestions(QLineEdit& entry);
  /// For exactly this text; ignored when the person has typed on since, or gone elsewhere.
  void offer(const QString& forText, const std::vector<NameWords>& names);
  [[nodiscard]] bool offering() const;

 signals:
  void asked(const QString& text);
  void taken();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void take(const QModelIndex& index);
  QLineEdit& entry_;
  QStandardItemModel names_;
  QCompleter completer_;
};

}  // namespace ohmkin::parts
