#include "changes.h"

#include <catalog/change_log.h>
#include <catalog/row_editor.h>
#include <catalog/search.h>
#include <algorithm>
#include <string>

namespace ohmkin::test {

namespace {

const std::vector<catalog::Cell> kEditedGauge{catalog::Cell{std::string("g1")}};

catalog::ChangeLine lastChange(const catalog::Catalogue& catalogue) {
  catalog::ChangeFilter newest;
  newest.most = 1;
  return changes(catalogue, newest).front();
}

/// Whether a search of those words finds that thing, by what the file keeps for searching.
bool isFound(const catalog::Catalogue& catalogue, const std::string& words, const std::string& id) {
  const auto answer = catalog::Search(catalogue).find({words, {}, 20, {}});
  return std::any_of(answer.hits.begin(), answer.hits.end(), [&](const auto& hit) { return hit.id == id; });
}

}  // namespace

void editRow(catalog::Catalogue& catalogue, int change) {
  const auto fine = [](const auto& outcome) {
    if (!outcome) qFatal("%s", outcome.error().sentence().c_str());
  };
  const auto before = thingState(catalogue, "gauge", kEditedGauge);
  const bool takesBack = change % 2 == 0;
  catalog::ThingState now = *before;
  if (takesBack) {
    now = *catalog::stateFromJson(lastChange(catalogue).before);
  } else {
    const std::string edit = "edit" + std::to_string(change);
    now.pack = "shop";
    now.row["name"] = edit;
    now.row["source"] = edit;
    now.parts["dial_mark"].front()["text"] = edit;
    now.newSource =
        catalog::RowCells{{"id", edit}, {"kind", std::string("bench")}, {"citation", edit}, {"confidence", 0.5}};
  }
  catalog::RowEditor editor(catalogue);
  if (!takesBack) fine(editor.addSource(*now.newSource));
  fine(editor.put(before, now));
  if (takesBack) editor.removeSourceIfUnused(*catalog::stateFromJson(lastChange(catalogue).after)->newSource);
  editor.log("anna", takesBack ? "change undone" : "row changed", catalog::subjectOf("gauge", kEditedGauge),
             asJson(*before), asJson(now));
  fine(editor.keep());
}

int rowEditsIn(catalog::Catalogue& catalogue) {
  const int edits = number(catalogue, "SELECT count(*) FROM change_log");
  const bool edited = edits % 2 == 1;
  const std::string last = "edit" + std::to_string(edits - (edited ? 0 : 1));
  const std::string mark = edited ? last : "C";
  const bool whole =
      number(catalogue, "SELECT count(*) FROM gauge WHERE name = '" + (edited ? last : "Gauge one") + "' AND pack = '" +
                            (edited ? "shop" : "p") + "' AND source = '" + (edited ? last : "d") + "'") == 1 &&
      number(catalogue, "SELECT count(*) FROM dial_mark WHERE gauge = 'g1'") == 2 &&
      number(catalogue, "SELECT count(*) FROM dial_mark WHERE gauge = 'g1' AND text = '" + mark + "'") == 1 &&
      number(catalogue, "SELECT count(*) FROM source WHERE id GLOB 'edit*'") == (edited ? 1 : 0) &&
      (edits == 0 || (isFound(catalogue, last, "g1") == edited && isFound(catalogue, "gauge one", "g1") == !edited));
  return whole ? edits : kHalf;
}

}  // namespace ohmkin::test
