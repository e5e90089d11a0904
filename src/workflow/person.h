#pragma once
#include <string>

namespace ohmkin::workflow {

/// Who is asking, for the change log where nobody says otherwise: the name the person is logged in by (USER, LOGNAME,
/// USERNAME, then the account's own); "ohmkin" where none is told.
std::string personLoggedIn();

}  // namespace ohmkin::workflow
