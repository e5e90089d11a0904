#pragma once

namespace ohmkin::measure {

/// Of the thread of work by hand; names, the quick check and keeping have their own, so that one does not drop another.
enum HandLane { asking, names, keeping, counter };
/// Of the thread of files: a million rows keep it busy while the table by hand answers on.
enum FileLane { preview, bringing, listing, undoing };

}  // namespace ohmkin::measure
