#include <catalog/file_system.h>
#include <sys/vfs.h>
#include <algorithm>
#include <array>

namespace ohmkin::catalog {
namespace {

long typeOf(const std::filesystem::path& file) {
  struct statfs about {};
  return statfs(file.c_str(), &about) == 0 ? static_cast<long>(about.f_type) : 0;
}

}  // namespace

FileSystemType fileSystemType = &typeOf;

bool isNetworkFileSystem(long type) {
  // statfs(2) and linux/magic.h. FUSE may be a disk of this machine or not; it is taken for not.
  constexpr std::array<unsigned long, 15> all{
      0x6969,      // NFS
      0x517B,      // SMB
      0xFF534D42,  // CIFS
      0xFE534D42,  // SMB 2
      0x01021997,  // 9P
      0x5346414F,  // AFS
      0x6B414653,  // kernel AFS
      0x73757245,  // Coda
      0x00C36400,  // Ceph
      0x0BD00BD0,  // Lustre
      0x01161970,  // GFS2
      0x7461636F,  // OCFS2
      0x65735546,  // FUSE
      0x786F4256,  // shared folder of a virtual machine
      0xBACBACBC,  // shared folder of a virtual machine
  };
  const auto bits = static_cast<unsigned long>(type) & 0xFFFFFFFFUL;  // of a signed word on some machines
  return std::find(all.begin(), all.end(), bits) != all.end();
}

}  // namespace ohmkin::catalog
