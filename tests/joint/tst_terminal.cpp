#include <joint/terminal.h>
#include <QTest>

using namespace ohmkin;
using namespace ohmkin::joint;

namespace {

// Tab widths of IEC 61210: 2.8, 4.8, 6.3, 9.5 mm.
const Terminal blade63{"B63", "blade 6.3 mm", TerminalKind::blade, millimetres(6.3), 1, "a flat tab", "IEC 61210"};
const Terminal blade48{"B48", "blade 4.8 mm",      TerminalKind::blade, millimetres(4.8),
                       1,     "a narrow flat tab", "IEC 61210"};
const Terminal stud{"S10", "stud No. 10", TerminalKind::stud, millimetres(4.8), 1, "a threaded post and nut", "demo"};
const Terminal twin{"B63-2", "two blades 6.3 mm", TerminalKind::blade, millimetres(6.3), 2, "two flat tabs", "demo"};
const std::vector<Pigtail> pigtails{{"PT-1", "S10", "B63", "demo sheet"}, {"PT-2", "B63", "S10", "demo sheet"}};

std::string first(const PlugJudgement& judgement) { return judgement.findings.front().code; }

}  // namespace

class TestTerminal : public QObject {
  Q_OBJECT
 private slots:
  void one_style_fits() {
    const auto judgement = judgePlug(blade63, blade63, pigtails);
    QCOMPARE(judgement.fit, TerminalFit::fits);
    QCOMPARE(first(judgement), std::string("terminal-fits"));
  }

  void the_same_shape_under_another_name_fits() {
    Terminal renamed = blade63;
    renamed.id = "shop-blade";
    QCOMPARE(judgePlug(renamed, blade63, pigtails).fit, TerminalFit::fits);
  }

  void neighbouring_tab_sizes_of_the_standard_do_not_fit() {  // IEC 61210 tab sizes
    QCOMPARE(judgePlug(blade48, blade63, {}).fit, TerminalFit::doesNotFit);
    QCOMPARE(judgePlug(blade48, blade63, {}).findings.front().severity, Severity::refusal);
  }

  void a_pigtail_works_one_way_only() {
    const auto onto = judgePlug(stud, blade63, std::span(pigtails).first(1));
    QCOMPARE(onto.fit, TerminalFit::needsPigtail);
    QCOMPARE(onto.pigtail, std::string("PT-1"));
    QCOMPARE(onto.findings.front().source, std::string("demo sheet"));
    QCOMPARE(judgePlug(blade63, stud, std::span(pigtails).first(1)).fit, TerminalFit::doesNotFit);
  }

  void a_stud_of_a_blades_size_is_no_blade() { QCOMPARE(judgePlug(blade48, stud, {}).fit, TerminalFit::doesNotFit); }

  void not_looked_at_is_not_wrong() {
    const auto judgement = judgePlug(std::nullopt, blade63, pigtails);
    QCOMPARE(judgement.fit, TerminalFit::notSeen);
    QCOMPARE(judgement.findings.front().severity, Severity::note);
    QVERIFY(judgement.findings.front().sentence.find("blade 6.3 mm") != std::string::npos);
    QCOMPARE(judgePlug(blade63, std::nullopt, pigtails).fit, TerminalFit::notSeen);
  }

  void a_size_that_is_not_known_is_not_wrong() {
    Terminal some = blade63;
    some.id = "some blade";
    some.size.reset();
    QCOMPARE(judgePlug(some, blade63, pigtails).fit, TerminalFit::notSeen);
  }

  void a_second_contact_is_said() {
    const auto judgement = judgePlug(blade63, twin, {});
    QCOMPARE(judgement.fit, TerminalFit::doesNotFit);
    QCOMPARE(judgement.findings.back().code, std::string("terminal-second-contact"));
  }
};

QTEST_APPLESS_MAIN(TestTerminal)
#include "tst_terminal.moc"
