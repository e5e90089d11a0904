#pragma once
#include <workflow/job_work.h>
#include <string>
#include <string_view>

/// Inside this room only: a file that a job refers to.
namespace ohmkin::workflow {

struct AttachmentLook {
  AttachmentState state = AttachmentState::unreadable;
  std::string words;  ///< empty where it is there and unchanged
};
/// `document` as attachFile() wrote it. Reads the file whole where its size is what it was.
AttachmentLook lookAtAttachment(std::string_view document);

}  // namespace ohmkin::workflow
