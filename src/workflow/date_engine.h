#pragma once
#include <catalog/catalogue.h>
#include <catalog/engines.h>
#include <dating/evidence.h>
#include <dating/layout.h>
#include <finding/finding.h>
#include <finding/refusal.h>
#include <optional>
#include <string>
#include <vector>

/// Reading the castings: what the codes can mean, when the engine was made, and whether it is the vehicle's first.
namespace ohmkin::workflow {

/// One casting as a person reads it with a torch.
struct CastingRead {
  std::string name;  ///< for sentences: "left head"; empty: the role, with its side or a letter where there are several
  dating::CastingRole role = dating::CastingRole::head;
  std::string number;  ///< casting number; may be empty
  std::string code;    ///< date code, ? for what cannot be read
  std::string layout;  ///< id of the layout it is written in; empty: the casting's own, else every layout found on such
                       ///< a casting
};

struct DateQuestion {
  std::vector<CastingRead> castings;  ///< heads one by one
  std::string stamp;                  ///< assembly stamp code
  std::string stampLayout;
  bool padRecut = false;
  std::string line;  ///< vehicle line, for its own span
  std::optional<ModelYear> year;
  std::optional<Date> built;
  DateSpan window;          ///< dates thought possible; open: 1900 to 2030
  dating::Beliefs beliefs;  ///< usual lags and shares: from memory unless somebody set them
};

/// One meaning of a code.
struct CodeMeaning {
  dating::Reading reading;
  std::string layout;                ///< name of the layout it was read by
  std::vector<std::string> assumed;  ///< "8 read as 3"; empty: as it stands
  /// With everything else that is known; sums to 1 over a code's meanings, or all 0 where none fits.
  double probability = 0;
};

struct CodeRead {
  std::string name;
  std::string code;
  std::optional<catalog::Casting> casting;
  std::vector<CodeMeaning> meanings;  ///< most probable first
  std::vector<Finding> findings;      ///< why a plain text is no date, and the nearest that is
};

/// A bar or a mark of the time line.
struct TimeSpan {
  std::string name;  ///< "left head, production of casting 30418"
  DateSpan span;
  std::string kind;  ///< "casting", "reading", "stamp", "vehicle", "cluster"
};

struct DateAnswer {
  std::vector<CodeRead> codes;  ///< castings in the order asked, then the stamp
  dating::Posterior posterior;
  std::string summary;      ///< "1980s (99 %), most probably 22 Aug 1981"
  std::string engineWords;  ///< "Head cast thirteen years after the vehicle: the engine is a later one."
  std::vector<TimeSpan> timeLine;
  std::vector<Finding> findings;
  dating::Beliefs beliefs;               ///< the lags and shares that were used
  std::vector<std::string> assumptions;  ///< these and the dates considered in words, saying where they come from
  [[nodiscard]] bool dated() const { return !posterior.assembly.empty(); }
};

/// Refuses casting numbers, layouts, lines and years the catalogue does not have; an impossible code is an answer that
/// says why.
Expected<DateAnswer> dateEngine(const catalog::Catalogue& catalogue, const DateQuestion& question);

/// For the try-it box: a layout as being written, and what a text means under it. Refuses an unsound layout with the
/// reason.
Expected<dating::Decoded> tryLayout(const dating::Layout& layout, const std::string& text, const DateSpan& window = {});

}  // namespace ohmkin::workflow
