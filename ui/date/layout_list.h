#pragma once
#include <dating/layout.h>
#include <QListWidget>
#include <vector>

namespace ohmkin::castings {

/// Layouts by name, each with where it is found and what it looks like.
class LayoutList : public QListWidget {
  Q_OBJECT

 public:
  explicit LayoutList(QWidget* parent = nullptr);
  /// With a code and the day it names of each.
  void display(const std::vector<dating::Layout>& layouts, const std::vector<std::pair<QString, QString>>& examples);
};

}  // namespace ohmkin::castings
