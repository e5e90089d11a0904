#pragma once
#include <QtCore/QByteArray>
#include <string>
#include <vector>

/// Zips put together byte by byte (APPNOTE.TXT 6.3.10, sections 4.3 and 4.4), stored and not packed, so that a test can
/// say in them what no honest program would.
namespace ohmkin::test {

struct ZipEntry {
  std::string name;
  std::string text;
  unsigned mode = 0100644;  ///< as Unix has it: type and permissions
  unsigned flags = 0;       ///< bit 0: locked with a password
};

inline unsigned crc32Of(const std::string& text) {
  unsigned crc = 0xFFFFFFFFU;
  for (const char c : text) {
    crc ^= static_cast<unsigned char>(c);
    for (int bit = 0; bit < 8; ++bit) crc = (crc >> 1U) ^ (0xEDB88320U & (0U - (crc & 1U)));
  }
  return ~crc;
}

inline QByteArray zipOf(const std::vector<ZipEntry>& entries) {
  QByteArray zip;
  QByteArray directory;
  const auto put = [](QByteArray& into, unsigned value, int bytes) {
    for (int i = 0; i < bytes; ++i) into += static_cast<char>((value >> (8U * static_cast<unsigned>(i))) & 0xFFU);
  };
  for (const ZipEntry& entry : entries) {
    const auto offset = static_cast<unsigned>(zip.size());
    const auto size = static_cast<unsigned>(entry.text.size());
    const auto common = [&](QByteArray& into) {
      put(into, 20, 2);           // version needed
      put(into, entry.flags, 2);  // general purpose
      put(into, 0, 2);            // stored
      put(into, 0x00210000U, 4);  // 1980-01-01
      put(into, crc32Of(entry.text), 4);
      put(into, size, 4);
      put(into, size, 4);
      put(into, static_cast<unsigned>(entry.name.size()), 2);
      put(into, 0, 2);  // extra
    };
    put(zip, 0x04034B50U, 4);
    common(zip);
    zip += QByteArray::fromStdString(entry.name) + QByteArray::fromStdString(entry.text);
    put(directory, 0x02014B50U, 4);
    put(directory, 0x0314U, 2);  // made on Unix
    common(directory);
    put(directory, 0, 2);  // comment
    put(directory, 0, 2);  // disk
    put(directory, 0, 2);  // internal attributes
    put(directory, entry.mode << 16U, 4);
    put(directory, offset, 4);
    directory += QByteArray::fromStdString(entry.name);
  }
  const auto start = static_cast<unsigned>(zip.size());
  zip += directory;
  put(zip, 0x06054B50U, 4);
  put(zip, 0, 4);
  put(zip, static_cast<unsigned>(entries.size()), 2);
  put(zip, static_cast<unsigned>(entries.size()), 2);
  put(zip, static_cast<unsigned>(directory.size()), 4);
  put(zip, start, 4);
  put(zip, 0, 2);
  return zip;
}

}  // namespace ohmkin::test
