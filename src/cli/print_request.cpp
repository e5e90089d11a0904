#include <cli/print_request.h>

#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <ostream>

// POSIX.1-2008: declared by the program that uses it; glibc does as well.
extern char** environ;  // NOLINT(readability-redundant-declaration)

namespace ohmkin::cli {
namespace {

constexpr std::string_view kWindowProgram = "ohmkin-window";

/// A folder of our own for the pages of a PDF, gone again at the end.
class PageFolder {
 public:
  PageFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "ohmkin-XXXXXX").string();
    if (mkdtemp(name.data()) != nullptr) path_ = name;
  }
  PageFolder(const PageFolder&) = delete;
  PageFolder& operator=(const PageFolder&) = delete;
  ~PageFolder() {
    std::error_code ignored;
    if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

Expected<void> writePages(const std::filesystem::path& first, const sheet::Pages& pages, std::string_view option) {
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::filesystem::path name = pageFile(first, i + 1);
    std::ofstream file(name, std::ios::binary | std::ios::trunc);
    file << pages[i];
    if (!file.flush())
      return refuse("sheet-not-saved", std::string(option), "'" + name.string() + "'", "a place that can be written");
  }
  return {};
}

/// The environment of this process, but for the platform: the window program shall open no window.
std::vector<std::string> windowlessEnvironment() {
  std::vector<std::string> out;
  constexpr std::string_view kPlatform = "QT_QPA_PLATFORM=";
  for (char** entry = environ; entry != nullptr && *entry != nullptr; ++entry) {
    if (!std::string_view(*entry).starts_with(kPlatform)) out.emplace_back(*entry);
  }
  out.push_back(std::string(kPlatform) + "offscreen");
  return out;
}

std::vector<char*> pointers(std::vector<std::string>& texts) {
  std::vector<char*> out;
  out.reserve(texts.size() + 1);
  for (std::string& text : texts) out.push_back(text.data());
  out.push_back(nullptr);
  return out;
}

/// What it ended with; −1 where it did not start or was killed.
int ran(const std::filesystem::path& program, std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), program.string());
  std::vector<std::string> environment = windowlessEnvironment();
  pid_t child = 0;
  if (posix_spawn(&child, program.c_str(), nullptr, nullptr, pointers(arguments).data(),
                  pointers(environment).data()) != 0)
    return -1;
  int status = 0;
  while (waitpid(child, &status, 0) < 0)
    if (errno != EINTR) return -1;
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

Expected<void> makePdf(const std::string& pdf, const sheet::Pages& pages) {
  const std::filesystem::path program = windowProgram();
  if (program.empty())
    return refuse("window-program-missing", "--pdf",
                  fmt::format("no {} beside this program or on PATH", kWindowProgram),
                  "it installed, for it makes the PDF; --svg needs nothing");
  const PageFolder folder;
  if (folder.path().empty())
    return refuse("no-temporary-folder", "--pdf", std::strerror(errno), "a temporary folder that can be written");
  const std::filesystem::path first = folder.path() / "page.svg";
  if (auto written = writePages(first, pages, "--pdf"); !written) return written;
  std::vector<std::string> arguments{"--print", "--pdf=" + pdf};
  for (std::size_t i = 1; i <= pages.size(); ++i) arguments.push_back(pageFile(first, i).string());
  const int ended = ran(program, std::move(arguments));
  if (ended == 0) return {};
  return refuse("pdf-not-made", "--pdf", "'" + pdf + "', which " + program.string() + " did not write",
                "a place that can be written");
}

}  // namespace

std::vector<OptionSpec> withPrintOptions(std::vector<OptionSpec> own) {
  own.push_back({"--svg", "FILE", "the sheet to print, in true millimetres; further pages go to FILE-2 and so on"});
  own.push_back({"--pdf", "FILE", "the same as one PDF, made by ohmkin-window"});
  own.push_back({"--paper", "SIZE", "A4 or Letter; otherwise A4", false, {"A4", "Letter"}});
  return own;
}

Expected<PrintRequest> printRequest(const Arguments& arguments, const DisplayUnits& units) {
  PrintRequest request;
  request.options.units = units;
  request.options.day = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
  request.svg = arguments.one("--svg");
  request.pdf = arguments.one("--pdf");
  for (const auto& [option, file] : {std::pair{"--svg", &request.svg}, std::pair{"--pdf", &request.pdf}})
    if (arguments.has(option) && file->empty()) return refuse("file-not-named", option, "nothing", "a FILE to write");
  if (arguments.has("--paper")) {
    const auto paper = sheet::parsePaper(arguments.one("--paper"), "--paper");
    if (!paper) return tl::make_unexpected(paper.error());
    request.options.paper = *paper;
  }
  return request;
}

Expected<void> deliver(const PrintRequest& request, const sheet::Pages& pages, Streams streams) {
  if (!request.svg.empty()) {
    if (auto written = writePages(request.svg, pages, "--svg"); !written) return written;
    for (std::size_t i = 1; i <= pages.size(); ++i)
      streams.err << fmt::format("ohmkin: wrote {}\n", pageFile(request.svg, i).string());
  }
  if (!request.pdf.empty()) {
    if (auto made = makePdf(request.pdf, pages); !made) return made;
    streams.err << fmt::format("ohmkin: wrote {}, {} page{}\n", request.pdf, pages.size(),
                               pages.size() == 1 ? "" : "s");
  }
  return {};
}

std::filesystem::path pageFile(const std::filesystem::path& first, std::size_t page) {
  if (page < 2) return first;
  return first.parent_path() / fmt::format("{}-{}{}", first.stem().string(), page, first.extension().string());
}

std::filesystem::path windowProgram() {
  std::error_code ignored;
  const auto runs = [&](const std::filesystem::path& file) {
    return std::filesystem::is_regular_file(file, ignored) && access(file.c_str(), X_OK) == 0;
  };
  const std::filesystem::path self = std::filesystem::read_symlink("/proc/self/exe", ignored);
  if (!self.empty() && runs(self.parent_path() / kWindowProgram)) return self.parent_path() / kWindowProgram;
  const char* path = std::getenv("PATH");
  std::string_view rest = path == nullptr ? "" : path;
  while (!rest.empty()) {
    const std::size_t colon = rest.find(':');
    const std::string_view folder = rest.substr(0, colon);
    // An empty entry means the current folder; nothing is started from there unasked.
    if (!folder.empty() && runs(std::filesystem::path(folder) / kWindowProgram))
      return std::filesystem::path(folder) / kWindowProgram;
    rest = colon == std::string_view::npos ? "" : rest.substr(colon + 1);
  }
  return {};
}

}  // namespace ohmkin::cli
