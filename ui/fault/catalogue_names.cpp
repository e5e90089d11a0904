#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/senders.h>
#include <desk/catalogue_thread.h>
#include <fault/presenter.h>
#include <QCoreApplication>
#include <map>

namespace ohmkin::fault {
namespace {

using desk::plain;

QString tr(const char* text) { return QCoreApplication::translate("Fault", text); }

}  // namespace

std::vector<parts::NameWords> gaugeNames(const catalog::Catalogue& catalogue) {
  std::vector<parts::NameWords> names;
  for (const auto& gauge : catalog::gauges(catalogue)) {
    QStringList aside{plain(gauge.id.text)};
    if (const auto family = catalog::family(catalogue, gauge.family)) aside << plain(family->name);
    names.push_back({plain(gauge.name), aside.join(QStringLiteral(" · "))});
  }
  for (const auto& family : catalog::families(catalogue))
    names.push_back({plain(family.name), tr("resistance family %1").arg(plain(family.id.text))});
  return names;
}

std::vector<parts::NameWords> senderNames(const catalog::Catalogue& catalogue) {
  std::vector<parts::NameWords> names;
  const auto families = catalog::families(catalogue);
  std::map<std::string, QString> familyNames;
  for (const auto& family : families) familyNames.emplace(family.id.text, plain(family.name));
  for (const auto& sender : catalog::senders(catalogue))
    if (sender.family) names.push_back({plain(sender.id.text), familyNames[sender.family->text]});
  for (const auto& family : families)
    names.push_back({plain(family.name), tr("resistance family %1").arg(plain(family.id.text))});
  return names;
}

}  // namespace ohmkin::fault
