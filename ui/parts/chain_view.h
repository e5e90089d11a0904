#pragma once
#include <parts/fit.h>
#include <QWidget>
#include <array>

/// The circuit read from left to right: dash gauge, lead, sender, head port, engine, and how each joins the next.
namespace ohmkin::parts {

enum class Known { seen, known, inferred, conflict, notSeen };

struct LinkWords {
  QString title;
  QString headline;
  QString detail;
  QString basis;  ///< how it came to be known, in words
  Known known = Known::notSeen;
  friend bool operator==(const LinkWords&, const LinkWords&) = default;
};

struct JointWords {
  Fit fit = Fit::look;
  QString words;
  friend bool operator==(const JointWords&, const JointWords&) = default;
};

struct Chain {
  std::array<LinkWords, 5> links;
  std::array<JointWords, 4> joints;
  friend bool operator==(const Chain&, const Chain&) = default;
};

/// One card. Solid edge: known; dashed: not seen; heavy warning edge: two facts disagree.
class LinkCard : public QWidget {
  Q_OBJECT

 public:
  explicit LinkCard(QWidget* parent);
  void display(const LinkWords& words);
  [[nodiscard]] int heightFor(int width) const;

 signals:
  void chosen();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  LinkWords words_;
};

/// One joint: the shape on the wire, its words below.
class JointMark : public QWidget {
  Q_OBJECT

 public:
  explicit JointMark(QWidget* parent);
  void display(const JointWords& words, const QString& from, const QString& to);
  void setWireHeight(int y) { wireHeight_ = y; }

 signals:
  void chosen();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  JointWords words_;
  int wireHeight_ = 0;
};

class ChainView : public QWidget {
  Q_OBJECT

 public:
  explicit ChainView(QWidget* parent = nullptr);
  void display(const Chain& chain);
  [[nodiscard]] const Chain& chain() const { return chain_; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void linkChosen(int link);    ///< 0 dash gauge … 4 engine
  void jointChosen(int joint);  ///< 0 gauge–lead … 3 port–engine

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void place();
  std::array<LinkCard*, 5> cards_{};
  std::array<JointMark*, 4> joints_{};
  Chain chain_;
};

}  // namespace ohmkin::parts
