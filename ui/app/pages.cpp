#include <app/pages.h>
#include <catalogue/catalogue_page.h>
#include <date/date_page.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <plan/plan_page.h>
#include <QCoreApplication>

namespace ohmkin::app {

const std::vector<desk::PageEntry>& pages() {
  static const std::vector<desk::PageEntry> all{
      {QCoreApplication::translate("Pages", "Match"), QKeySequence(Qt::CTRL | Qt::Key_1),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* { return new match::MatchPage(settings, parent); }},
      {QCoreApplication::translate("Pages", "Date"), QKeySequence(Qt::CTRL | Qt::Key_2),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* {
         return new castings::DatePage(settings, parent);
       }},
      {QCoreApplication::translate("Pages", "Plan"), QKeySequence(Qt::CTRL | Qt::Key_3),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* { return new plan::PlanPage(settings, parent); }},
      {QCoreApplication::translate("Pages", "Bench"), QKeySequence(Qt::CTRL | Qt::Key_4),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* {
         return new measure::BenchPage(settings, parent);
       },
       true},
      {QCoreApplication::translate("Pages", "Fault"), QKeySequence(Qt::CTRL | Qt::Key_5),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* { return new fault::FaultPage(settings, parent); },
       false, QStringLiteral("ohmkin.fault-session")},
      {QCoreApplication::translate("Pages", "Catalogue"), QKeySequence(Qt::CTRL | Qt::Key_6),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* {
         return new shelves::CataloguePage(settings, parent);
       }},
      {QCoreApplication::translate("Pages", "Jobs"), QKeySequence(Qt::CTRL | Qt::Key_7),
       [](desk::Settings& settings, QWidget* parent) -> desk::Page* { return new jobs::JobsPage(settings, parent); }},
  };
  return all;
}

}  // namespace ohmkin::app
