#include <workflow/edit_names.h>
#include <algorithm>
#include <array>

namespace ohmkin::workflow {
namespace {

constexpr auto kTables = std::to_array<TableWords>({
    {"source", "source", "sources", "Where facts come from.", "citation"},
    {"thread", "thread", "threads", "Threads of ports and senders, by their dimensions.", "standard"},
    {"terminal", "terminal", "terminals", "Styles of terminal at the wire's end and on the sender.", "name"},
    {"pigtail", "pigtail", "pigtails", "Short leads from one style of terminal to another.", ""},
    {"adapter", "adapter", "adapters", "Bushings from one thread to another.", ""},
    {"family", "resistance family", "resistance families", "Senders that follow one curve, and gauges built for it.",
     "name"},
    {"sender", "sender", "senders", "Part numbers: senders, switches, sensors.", "name"},
    {"curve", "curve", "curves", "Ohms against temperature, of a family or of one lot of a part.", "family"},
    {"sample", "point", "points", "Measured or stated points of a curve.", ""},
    {"stands_in_for", "replacement", "replacements", "Which part stands in for which older one.", ""},
    {"gauge", "gauge", "gauges", "Dash gauges with the marks of their dials.", "name"},
    {"dial_mark", "mark", "marks", "Marks of the dial, by rising temperature.", ""},
    {"movement_point", "bench point", "bench points", "Ohms on the lead and where the needle stood.", ""},
    {"make", "make", "makes", "Who built the vehicle.", "name"},
    {"vehicle_line", "vehicle line", "vehicle lines", "Lines of vehicles and their model years.", "name"},
    {"cluster", "cluster", "clusters", "Instrument clusters: which line, which years, which gauge.", "option"},
    {"engine_family", "engine family", "engine families", "Engines, their thermostat and pressure cap.", "name"},
    {"original_engine", "original engine", "original engines", "Which engine a line had new.", ""},
    {"date_layout", "date layout", "date layouts", "How a date is written in a casting or stamp.", "name"},
    {"date_field", "field", "fields", "Fields of the date, in order.", ""},
    {"casting", "casting", "castings", "Casting numbers, when they were cast, and their ports.", "engine"},
    {"port", "port", "ports", "Threaded holes of a casting.", ""},
    {"original_sender", "original sender", "original senders", "Which part was fitted new to which line and engine.",
     ""},
});

struct Column {
  std::string_view table;  ///< empty: wherever it comes
  std::string_view column;
  FieldWords words;
};

using U = EditUnit;
constexpr auto kColumns = std::to_array<Column>({
    {"sender", "id", {"Part number"}},
    {"casting", "id", {"Casting number"}},
    {"thread", "id", {"Designation"}},
    {"pigtail", "id", {"Part number"}},
    {"adapter", "id", {"Part number"}},
    {"", "id", {"Id"}},
    {"source", "citation", {"What is cited"}},
    {"thread", "form", {"Form of thread"}},
    {"thread", "flank_angle", {"Angle between flanks", U::degrees}},
    {"thread", "pitch", {"Pitch", U::millimetres}},
    {"thread", "diameter", {"Diameter at the crest", U::millimetres}},
    {"terminal", "size", {"Width or diameter", U::millimetres}},
    {"terminal", "look", {"How to tell it"}},
    {"pigtail", "harness", {"Takes the wire end"}},
    {"pigtail", "sender", {"Fits the sender's terminal"}},
    {"adapter", "port", {"Screws into"}},
    {"adapter", "sender", {"Takes the sender's thread"}},
    {"adapter", "immersion_lost", {"Immersion lost", U::millimetres}},
    {"family", "measurand", {"What is measured"}},
    {"family", "direction", {"Ohms, as it rises"}},
    {"family", "tolerance", {"Tolerance of ohms", U::part}},
    {"family", "cold_ohms", {"Ohms, cold", U::ohms}},
    {"family", "hot_ohms", {"Ohms, hot", U::ohms}},
    {"family", "cold_low", {"Cold: at least", U::celsius}},
    {"family", "cold_high", {"Cold: at most", U::celsius}},
    {"family", "hot_low", {"Hot: at least", U::celsius}},
    {"family", "hot_high", {"Hot: at most", U::celsius}},
    {"sender", "reach", {"Reach below the hex", U::millimetres}},
    {"sender", "hex", {"Hex", U::millimetres}},
    {"sender", "torque_low", {"Torque, least", U::newtonMetres}},
    {"sender", "torque_high", {"Torque, most", U::newtonMetres}},
    {"sender", "era_from", {"Fitted new from"}},
    {"sender", "era_until", {"Fitted new until, not included"}},
    {"curve", "sender", {"Part number"}},
    {"curve", "floor", {"Least uncertainty of ln R"}},
    {"curve", "valid_low", {"Valid from", U::celsius}},
    {"curve", "valid_high", {"Valid to", U::celsius}},
    {"sample", "temperature", {"Temperature", U::celsius}},
    {"sample", "ohms", {"Ohms", U::ohms}},
    {"sample", "direction", {"While"}},
    {"stands_in_for", "sender", {"The newer part"}},
    {"stands_in_for", "replaces", {"Stands in for"}},
    {"gauge", "grounded", {"Needle, lead grounded", U::degrees}},
    {"gauge", "sweep", {"Sweep to lead open", U::degrees}},
    {"gauge", "half", {"Ohms at half the sweep", U::ohms}},
    {"gauge", "feed_coil", {"Feed coil", U::ohms}},
    {"gauge", "ground_coil", {"Ground coil", U::ohms}},
    {"gauge", "rest", {"Needle at rest", U::degrees}},
    {"gauge", "heater", {"Heater", U::ohms}},
    {"gauge", "regulated", {"Behind the regulator", U::volts}},
    {"gauge", "key_off", {"Key off, the needle"}},
    {"gauge", "tolerance", {"Uncertainty of a good one", U::part}},
    {"gauge", "low_stop", {"Low stop", U::degrees}},
    {"gauge", "high_stop", {"High stop", U::degrees}},
    {"gauge", "magnet_strength", {"Magnet: strength", U::part}},
    {"gauge", "magnet_pull", {"Magnet: pulls towards", U::degrees}},
    {"gauge", "magnet_weakening", {"Magnet: weakening at", U::ohms}},
    {"dial_mark", "temperature", {"Temperature", U::celsius}},
    {"dial_mark", "angle", {"Angle", U::degrees}},
    {"movement_point", "ohms", {"Ohms on the lead", U::ohms}},
    {"movement_point", "angle", {"Needle", U::degrees}},
    {"vehicle_line", "also", {"Also called"}},
    {"vehicle_line", "volts", {"Volts", U::volts}},
    {"", "year_from", {"From model year"}},
    {"", "year_until", {"Until model year, not included"}},
    {"cluster", "line", {"Vehicle line"}},
    {"cluster", "built_from", {"Built from"}},
    {"cluster", "built_until", {"Built until, not included"}},
    {"cluster", "serial_from", {"From serial"}},
    {"cluster", "serial_until", {"Until serial, not included"}},
    {"cluster", "lead_awg", {"Lead, AWG"}},
    {"cluster", "lead_length", {"Length of the lead", U::millimetres}},
    {"cluster", "tell", {"How to tell it"}},
    {"engine_family", "thermostat", {"Thermostat opens at", U::celsius}},
    {"engine_family", "cap", {"Pressure cap", U::kilopascals}},
    {"original_engine", "line", {"Vehicle line"}},
    {"original_sender", "line", {"Vehicle line"}},
    {"original_sender", "sender", {"Part number"}},
    {"date_layout", "example", {"Example"}},
    {"date_layout", "example_date", {"The day it names"}},
    {"date_field", "optional", {"May be left out"}},
    {"casting", "cast_from", {"Cast from"}},
    {"casting", "cast_until", {"Cast until, not included"}},
    {"casting", "layout", {"Date layout"}},
    {"port", "depth", {"Depth", U::millimetres}},
    {"port", "longest_reach", {"Longest reach", U::millimetres}},
    {"port", "offset_k", {"Hotter than the outlet by", U::kelvin}},
});

}  // namespace

const TableWords* tableWords(std::string_view table) {
  const auto* found =
      std::find_if(kTables.begin(), kTables.end(), [&](const TableWords& words) { return words.table == table; });
  return found == kTables.end() ? nullptr : found;
}

std::optional<FieldWords> fieldWords(std::string_view table, std::string_view column) {
  for (const Column& words : kColumns)
    if (words.column == column && (words.table.empty() || words.table == table)) return words.words;
  return {};
}

}  // namespace ohmkin::workflow
