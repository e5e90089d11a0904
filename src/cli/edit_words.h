#pragma once
#include <cli/json_values.h>
#include <workflow/edit_session.h>
#include <iosfwd>
#include <string>
#include <vector>

/// What `ohmkin edit` and `ohmkin log` both say, and the words that change a thing.
namespace ohmkin::cli {

/// Changes the thing as the words say. "name=value" sets a field, "name=" empties it; "dial_mark[3].angle=42" sets one
/// of a row of its parts, the row after the last is a new one; "dial_mark[3]=" takes the row out. Rows keep the numbers
/// they had before the first word. Refuses field-unknown, part-unknown, row-unknown, assignment-unreadable.
Expected<void> assign(workflow::Thing& thing, const std::vector<std::string>& words);

/// The thing of a document that json() made, whoever wrote it since. Only its shape is checked here; what its fields
/// hold is checked like anything typed. Refuses document-unreadable.
Expected<workflow::Thing> thingFrom(const std::string& text);

/// The document of a thing; "about" says what its fields take.
Json json(const workflow::Thing& thing);
void print(const workflow::Thing& thing, std::ostream& out);

Json json(const workflow::FieldChange& change);
Json json(const workflow::UsedBy& usedBy);
Json json(const workflow::EditRefusal& refusal);
/// A line for each reason, then what is used by what, then what another changed.
void complain(const workflow::EditRefusal& refusal, std::ostream& err);

}  // namespace ohmkin::cli
