#include <cli/version_text.h>

#if !defined(OHMKIN_VERSION) || !defined(OHMKIN_LIBRARIES)
#error "the build names the version once, in CMakeLists.txt, and the libraries it found"
#endif

namespace ohmkin::cli {

std::string_view version() { return OHMKIN_VERSION; }

std::string versionText() { return "ohmkin " OHMKIN_VERSION "\nBuilt with " OHMKIN_LIBRARIES ".\n"; }

}  // namespace ohmkin::cli
