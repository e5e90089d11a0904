#include <pwd.h>
#include <unistd.h>
#include <workflow/person.h>
#include <cstdlib>

namespace ohmkin::workflow {

std::string personLoggedIn() {
  for (const char* name : {"USER", "LOGNAME", "USERNAME"})
    if (const char* value = std::getenv(name); value != nullptr && *value != '\0') return value;
  const passwd* account = getpwuid(getuid());  // a program started by the desktop may have none of the above
  return account != nullptr && account->pw_name != nullptr ? account->pw_name : "ohmkin";
}

}  // namespace ohmkin::workflow
