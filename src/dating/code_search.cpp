#include <dating/code_search.h>
#include <algorithm>

namespace ohmkin::dating {
namespace {

constexpr int kNever = 1000;  ///< more look-alikes than any code has characters

/// One way a field can stand at a place.
struct Standing {
  std::size_t length = 0;  ///< characters
  int value = 0;
  int swapped = 0;
  int filled = 0;
  bool present = true;
  bool spacing = false;      ///< a separator is missing, or spaces stand inside the field
  bool beforeLoose = false;  ///< a space before it needs no explanation
  bool afterLoose = false;   ///< nor one behind it
  std::string text;
};

class Search {
 public:
  Search(const Template& layout, const Sight& sight, int mostSwapped)
      : template_(layout),
        sight_(sight),
        mostSwapped_(mostSwapped),
        fields_(layout.layout.fields.size()),
        places_(sight.at.size() + 1) {
    standings_.resize(fields_ * places_);
    swapsToFinish_.assign((fields_ + 1) * places_, kNever);
  }

  PathsFound run() {
    findStandings();
    measureBackward();
    if (swapsToFinish_[index(0, 0)] <= mostSwapped_) follow(0, 0, false);
    return std::move(found_);
  }

 private:
  [[nodiscard]] std::size_t index(std::size_t field, std::size_t place) const { return field * places_ + place; }
  [[nodiscard]] const Field& field(std::size_t f) const { return template_.layout.fields[f]; }

  void findStandings() {
    std::vector<bool> reached((fields_ + 1) * places_, false);
    reached[index(0, 0)] = true;
    for (std::size_t f = 0; f < fields_; ++f)
      for (std::size_t p = 0; p < places_; ++p) {
        if (!reached[index(f, p)]) continue;
        if (f > found_.furthestField || (f == found_.furthestField && p > found_.furthestPlace)) {
          found_.furthestField = f;
          found_.furthestPlace = p;
        }
        auto& here = standings_[index(f, p)];
        here = standingsAt(f, p);
        for (const Standing& s : here) reached[index(f + 1, p + s.length)] = true;
      }
    for (std::size_t p = 0; p < places_; ++p)
      if (reached[index(fields_, p)]) {
        found_.furthestField = fields_;
        found_.furthestPlace = p;
      }
  }

  void measureBackward() {
    swapsToFinish_[index(fields_, places_ - 1)] = 0;
    for (std::size_t f = fields_; f-- > 0;)
      for (std::size_t p = 0; p < places_; ++p)
        for (const Standing& s : standings_[index(f, p)])
          swapsToFinish_[index(f, p)] =
              std::min(swapsToFinish_[index(f, p)], s.swapped + swapsToFinish_[index(f + 1, p + s.length)]);
  }

  /// The form at the place, or nothing.
  [[nodiscard]] std::optional<Standing> match(std::string_view form, std::size_t place) const {
    if (place + form.size() > sight_.at.size()) return {};
    Standing s;
    s.length = form.size();
    for (std::size_t i = 0; i < form.size(); ++i) {
      const Likeness likeness = sight_.at[place + i][static_cast<std::size_t>(form[i])];
      if (likeness == Likeness::none) return {};
      s.swapped += likeness == Likeness::lookAlike;
      s.filled += likeness == Likeness::filled;
      s.spacing |= i > 0 && sight_.spaceBefore[place + i];
    }
    return s;
  }

  [[nodiscard]] std::vector<Standing> standingsAt(std::size_t f, std::size_t place) const {
    std::vector<Standing> here;
    const FieldKind kind = field(f).kind;
    if (kind == FieldKind::separator || kind == FieldKind::shift) {
      here = oneOfSet(f, place);
    } else {
      for (const WrittenForm& form : template_.forms[f]) {
        std::optional<Standing> s = match(form.text, place);
        if (!s || s->swapped > mostSwapped_) continue;
        s->value = form.value;
        s->text = form.text;
        here.push_back(std::move(*s));
      }
    }
    const bool bySpace = kind == FieldKind::separator && !here.empty() && here.front().length == 0;
    if (!bySpace && (kind == FieldKind::separator || field(f).optional)) {
      Standing absent;
      absent.present = false;
      absent.spacing = !field(f).optional;  // a missing separator is a matter of spacing
      here.push_back(absent);
    }
    return here;
  }

  /// Separators and shifts say nothing about the date: the likeliest character of the set is enough, and a space beside
  /// it.
  [[nodiscard]] std::vector<Standing> oneOfSet(std::size_t f, std::size_t place) const {
    const bool separator = field(f).kind == FieldKind::separator;
    std::vector<Standing> here;
    std::optional<Standing> best;
    for (const WrittenForm& form : template_.forms[f]) {
      if (form.text == " ") {
        if (place >= sight_.at.size() || !sight_.spaceBefore[place]) continue;
        Standing& space = here.emplace_back();
        space.text = form.text;
        space.beforeLoose = space.afterLoose = true;
        continue;
      }
      std::optional<Standing> s = match(form.text, place);
      if (!s || (best && best->swapped + best->filled <= s->swapped + s->filled)) continue;
      s->text = s->filled > 0 && !separator ? "?" : form.text;
      s->beforeLoose = s->afterLoose = separator;
      best = std::move(s);
    }
    if (best) here.push_back(std::move(*best));
    return here;
  }

  void follow(std::size_t f, std::size_t place, bool spaceExplained) {
    if (found_.paths.size() >= kMostPaths) {
      found_.tooMany = true;
      return;
    }
    if (f == fields_) {
      found_.paths.push_back(path_);
      return;
    }
    for (const Standing& s : standings_[index(f, place)]) {
      if (path_.swapped + s.swapped + swapsToFinish_[index(f + 1, place + s.length)] > mostSwapped_) continue;
      const Mark mark{path_.swapped, path_.filled, path_.beyond, path_.spacing, path_.taken.size()};
      bool explained = spaceExplained;
      if (s.present) {
        const bool spaceHere = place > 0 && place < sight_.at.size() && sight_.spaceBefore[place];
        path_.spacing |= spaceHere && !spaceExplained && !s.beforeLoose;
        explained = s.afterLoose;
      }
      take(f, s);
      follow(f + 1, place + s.length, explained);
      stepBack(f, s, mark);
    }
  }

  void take(std::size_t f, const Standing& s) {
    path_.swapped += s.swapped;
    path_.filled += s.filled;
    path_.spacing |= s.spacing;
    if (!s.present) return;
    path_.taken += s.text;
    const Part part = partOf(field(f).kind);
    if (part == Part::nothing) return;
    path_.values[static_cast<std::size_t>(part)] = s.value;
    path_.said[static_cast<std::size_t>(part)] = true;
    path_.beyond += !inRange(field(f).kind, s.value);
  }

  /// What a step changes in the path, for taking it back.
  struct Mark {
    int swapped;
    int filled;
    int beyond;
    bool spacing;
    std::size_t taken;
  };
  void stepBack(std::size_t f, const Standing& s, const Mark& mark) {
    path_.swapped = mark.swapped;
    path_.filled = mark.filled;
    path_.beyond = mark.beyond;
    path_.spacing = mark.spacing;
    path_.taken.resize(mark.taken);
    if (s.present) path_.said[static_cast<std::size_t>(partOf(field(f).kind))] = false;
  }

  const Template& template_;
  const Sight& sight_;
  int mostSwapped_;
  std::size_t fields_;
  std::size_t places_;  ///< between characters: one more than there are characters
  std::vector<std::vector<Standing>> standings_;
  std::vector<int> swapsToFinish_;  ///< fewest look-alikes from here to the end
  Path path_;
  PathsFound found_;
};

}  // namespace

Template templateOf(const Layout& layout, int firstYear, int lastYear, bool beyond) {
  Template ready{layout, {}};
  for (const Field& field : layout.fields) {
    if (field.kind == FieldKind::separator || field.kind == FieldKind::shift) {
      auto& set = ready.forms.emplace_back();
      for (const char c : characterSet(field)) set.push_back({std::string(1, c), 0});
    } else {
      ready.forms.push_back(formsOf(field, firstYear, lastYear, beyond));
    }
  }
  return ready;
}

PathsFound pathsThrough(const Template& layout, const Sight& sight, int mostSwapped) {
  return Search(layout, sight, mostSwapped).run();
}

}  // namespace ohmkin::dating
