#include <catalogue/ref.h>
#include <desk/catalogue_thread.h>
#include <workflow/edit_kinds.h>
#include <QStringList>

namespace ohmkin::shelves {

QString kindWords(const std::string& kind) {
  const workflow::EditKind* known = workflow::editKind(kind);
  return desk::plain(known == nullptr ? kind : known->label);
}

QString nameOf(const Ref& ref) {
  QStringList key;
  for (const std::string& each : ref.key) key << desk::plain(each);
  return kindWords(ref.kind) + QLatin1Char(' ') + key.join(QStringLiteral(", "));
}

std::string subjectOf(const Ref& ref) {
  std::string subject = ref.kind;
  for (std::size_t i = 0; i < ref.key.size(); ++i) subject += (i == 0 ? " " : ", ") + ref.key[i];
  return subject;
}

std::string editKindOf(std::string_view word) {
  if (word == "engine") return "engine_family";
  const workflow::EditKind* kind = workflow::editKind(word);
  return kind == nullptr ? std::string() : kind->name;
}

}  // namespace ohmkin::shelves
