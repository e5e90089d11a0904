#pragma once
#include <app/pages.h>
#include <app/window.h>
#include <catalogue/catalogue_page.h>
#include <date/date_page.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <plan/plan_page.h>
#include <workflow/job_work.h>
#include <QApplication>
#include <QDebug>
#include <QTest>
#include <functional>
#include "demo.h"

/// The window with each page in turn, in the states a person sees most: empty, with an answer, with a form open.
class EveryPage {
 public:
  /// `forms`: with what is written on the pages opened too.
  EveryPage(const Demo& demo, const char* settingsName, const QSize& size, bool forms = false)
      : settings_(demo.path(settingsName)), window_(settings_), forms_(forms) {
    window_.resize(size);
    window_.show();
    (void)QTest::qWaitForWindowExposed(&window_);
    QApplication::setActiveWindow(&window_);
    if (forms_) keepAJob(demo.file());
    window_.openCatalogue(demo.file());
  }
  [[nodiscard]] ohmkin::app::Window& window() { return window_; }

  /// Calls `look` with the name of the state, once everything in it has come to rest.
  void visit(const std::function<void(const QString&)>& look) {
    auto* rail = window_.findChild<ohmkin::app::Rail*>();
    for (int at = 0; at < rail->count(); ++at) {
      rail->choose(at);
      const QString name = QString::fromLatin1(window_.page().metaObject()->className()).section(QLatin1Char(':'), -1);
      QTest::qWait(500);
      look(name);
      answered(name, look);
    }
  }

 private:
  static void keepAJob(const QString& file) {
    auto catalogue = ohmkin::catalog::Catalogue::open(file.toStdString(), ohmkin::catalog::Access::readWrite);
    if (ohmkin::catalog::jobCount(catalogue) > 0) return;
    ohmkin::catalog::JobFields said;
    said.reference = "green wagon";
    said.seen = "needle stays low";
    (void)ohmkin::workflow::openJob(catalogue, said, "Ann");
  }

  void answered(const QString& name, const std::function<void(const QString&)>& look) {
    using namespace ohmkin;
    const auto seen = [&](const char* state) {
      QTest::qWait(500);
      look(name + QStringLiteral(", ") + QString::fromLatin1(state));
    };
    if (auto* match = qobject_cast<match::MatchPage*>(&window_.page())) {
      match->query().setText(kSettled);
      (void)QTest::qWaitFor([&] { return match->showsAnswer(); }, 5000);
      for (int tab = 0; tab < 4; ++tab) {
        match->details().showTab(static_cast<match::DetailPanel::Tab>(tab));
        seen(qPrintable(QStringLiteral("tab %1").arg(tab)));
      }
    } else if (auto* date = qobject_cast<castings::DatePage*>(&window_.page())) {
      date->form().rows().at(0).number->setText(QStringLiteral("30418"));
      date->form().rows().at(0).code->setText(QStringLiteral("H 22 1"));
      (void)QTest::qWaitFor([&] { return date->showsAnswer(); }, 5000);
      seen("answered");
      date->showHalf(castings::DatePage::layouts);
      seen("layouts");
    } else if (auto* plan = qobject_cast<plan::PlanPage*>(&window_.page())) {
      plan->dashes().setLines({{kSeveral, std::nullopt}});
      plan->engines().setLines({{QStringLiteral("casting 30418 dated H 22 1"), std::nullopt}});
      (void)QTest::qWaitFor([&] { return plan->showsAnswer(); }, 15000);
      seen("answered");
    } else if (auto* bench = qobject_cast<measure::BenchPage*>(&window_.page())) {
      for (const auto part : {measure::BenchPage::atCounter, measure::BenchPage::fromFile, measure::BenchPage::kept}) {
        bench->showPart(part);
        seen(qPrintable(QStringLiteral("part %1").arg(static_cast<int>(part))));
      }
    } else if (!forms_) {
      return;
    } else if (auto* search = qobject_cast<fault::FaultPage*>(&window_.page())) {
      workflow::FaultSession session;
      session.question.gauge = "GA-1";
      search->goOn(session);
      (void)QTest::qWaitFor([&] { return search->showsAnswer() && !search->busy(); }, 15000);
      seen("begun");
    } else if (auto* shelves = qobject_cast<shelves::CataloguePage*>(&window_.page())) {
      lookAtCatalogue(*shelves, seen);
    } else if (auto* jobs = qobject_cast<jobs::JobsPage*>(&window_.page())) {
      for (const auto& [key, state] : {std::pair{Qt::Key_E, "note"}, {Qt::Key_M, "closing"}, {Qt::Key_N, "new job"}}) {
        QTest::keyClick(&jobs->search(), key, Qt::ControlModifier);
        seen(state);
        QTest::keyClick(&jobs->search(), Qt::Key_Escape);
      }
    }
  }

  template <class Seen>
  void lookAtCatalogue(ohmkin::shelves::CataloguePage& page, const Seen& seen) {
    using ohmkin::shelves::CataloguePage;
    page.query().setText(QStringLiteral("br2215"));
    (void)QTest::qWaitFor([&] { return page.found().rows().rowCount() > 0; }, 5000);
    seen("found");
    page.thing().edit();
    (void)QTest::qWaitFor([&] { return page.thing().editing(); }, 5000);
    seen("form");
    page.thing().escape();
    for (const auto part : {CataloguePage::table, CataloguePage::shelf, CataloguePage::log}) {
      page.showPart(part);
      seen(qPrintable(QStringLiteral("part %1").arg(static_cast<int>(part))));
    }
  }

  ohmkin::desk::Settings settings_;
  ohmkin::app::Window window_;
  bool forms_;
};

/// What is said of failures, all at once: one look mends them all.
inline QString listed(const QStringList& faults) {
  QStringList unique = faults;
  unique.removeDuplicates();
  if (unique.size() > 5)  // more than Qt Test prints of one message
    for (const QString& fault : unique) qWarning().noquote() << fault;
  return QStringLiteral("%1 faults:\n").arg(unique.size()) + unique.join(QLatin1Char('\n'));
}
