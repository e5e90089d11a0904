#include <exchange/text_source.h>
#include <fmt/format.h>
#include <iconv.h>
#include <algorithm>
#include <cerrno>

namespace ohmkin::exchange {

class TextSource::Converter {
 public:
  explicit Converter(const std::string& from) : handle_(iconv_open("UTF-8", from.c_str())) {}
  ~Converter() {
    if (sound()) iconv_close(handle_);
  }
  Converter(const Converter&) = delete;
  Converter& operator=(const Converter&) = delete;
  [[nodiscard]] bool sound() const {
    return handle_ != reinterpret_cast<iconv_t>(-1);  // NOLINT(performance-no-int-to-ptr): as POSIX has it
  }

  enum class End { all, brokenOff, unreadable };
  /// Converts `raw`, takes off it what was converted.
  End convert(std::vector<char>& raw, std::vector<char>& into) {
    char* from = raw.data();
    std::size_t left = raw.size();
    const std::size_t before = into.size();
    into.resize(before + 4 * left + 16);  // no character of any encoding grows beyond that
    char* to = into.data() + before;
    std::size_t room = into.size() - before;
    const bool failed = iconv(handle_, &from, &left, &to, &room) == static_cast<std::size_t>(-1);
    const int why = errno;
    into.resize(into.size() - room);
    raw.erase(raw.begin(), raw.end() - static_cast<std::ptrdiff_t>(left));
    if (!failed) return End::all;
    return why == EINVAL ? End::brokenOff : End::unreadable;
  }

 private:
  iconv_t handle_;
};

TextSource::TextSource(std::istream& in, const std::string& encoding) : in_(in), encoding_(encoding) {
  if (encoding == "utf-8") return;
  converter_ = std::make_unique<Converter>(encoding);
  if (!converter_->sound()) broken_ = fmt::format("the encoding '{}', which is not known here", encoding);
}

TextSource::~TextSource() = default;

bool TextSource::knows(const std::string& encoding) { return encoding == "utf-8" || Converter(encoding).sound(); }

std::size_t TextSource::fill(char* to, std::size_t most) {
  if (!in_) return 0;
  in_.read(to, static_cast<std::streamsize>(most));
  const auto got = static_cast<std::size_t>(in_.gcount());
  bytes_ += got;
  if (in_.bad()) broken_ = "a file that stopped being readable";
  return got;
}

bool TextSource::more(std::vector<char>& into, std::size_t most) {
  if (broken_) return false;
  if (!converter_) {
    const std::size_t before = into.size();
    into.resize(before + most);
    const std::size_t got = fill(into.data() + before, most);
    into.resize(before + got);
    return got > 0;
  }
  const std::size_t left = raw_.size();
  raw_.resize(left + most);
  const std::size_t got = fill(raw_.data() + left, most);
  raw_.resize(left + got);
  if (got == 0) {
    if (!raw_.empty() && !broken_)
      broken_ = fmt::format("a file broken off in the middle of a character of {}", encoding_);
    return false;
  }
  const auto end = converter_->convert(raw_, into);
  if (end == Converter::End::unreadable) {
    const unsigned byte = raw_.empty() ? 0U : static_cast<unsigned char>(raw_.front());
    broken_ = fmt::format("the byte {:02X}, which is no character of {}", byte, encoding_);
  }
  return true;  // what was converted before the bad byte is still worth its line numbers
}

}  // namespace ohmkin::exchange
