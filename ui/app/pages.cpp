#include <app/pages.h>
#include <match/match_page.h>
#include <QCoreApplication>

namespace ohmkin::app {

const std::vector<desk::PageEntry>& pages() {
  static const std::vector<desk::PageEntry> all{
      {QCoreApplication::translate("Pages", "Match"), QKeySequence(Qt::CTRL | Qt::Key_1),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* { return new match::MatchPage(settings, parent); }},
  };
  return all;
}

}  // namespace ohmkin::app
