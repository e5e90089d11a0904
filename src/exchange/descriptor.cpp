#include <exchange/licence_text.h>
#include <exchange/package.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

namespace ohmkin::exchange {
namespace {

using nlohmann::json;

constexpr const char* kFile = "datapackage.json";
constexpr std::size_t kMostResources = 1000;
constexpr std::size_t kLongestName = 100;

/// A text of the descriptor; empty where it is not there, complained of where it is something else or unfit to be
/// shown.
std::string textOf(const json& object, const char* name, const std::string& where, Complaints& complaints) {
  const auto found = object.find(name);
  if (found == object.end() || found->is_null()) return {};
  const auto* text = found->get_ptr<const std::string*>();
  const bool fit = text != nullptr && text->size() <= 1000 && std::none_of(text->begin(), text->end(), [](char c) {
                     return static_cast<unsigned char>(c) < 0x20U || c == 0x7F;
                   });
  if (fit) return *text;
  complaints.add("descriptor-text", fmt::format("{}:{}", where, name), shown(found->dump(-1, ' ', true).substr(0, 200)),
                 "a line of text");
  return {};
}

bool soundName(const std::string& name) {
  return !name.empty() && name.size() <= kLongestName && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.';
  });
}

void readHead(const json& document, Descriptor& descriptor, Complaints& complaints) {
  descriptor.id = textOf(document, "name", kFile, complaints);
  if (!soundName(descriptor.id))
    complaints.add("descriptor-name", fmt::format("{}:name", kFile), shown(descriptor.id),
                   "a name of a-z 0-9 - _ . for the package");
  else if (descriptor.id == "shop")
    complaints.add("descriptor-name", fmt::format("{}:name", kFile), "'shop'",
                   "another name: that one is the shop's own");
  descriptor.title = textOf(document, "title", kFile, complaints);
  if (descriptor.title.empty()) descriptor.title = descriptor.id;
  descriptor.version = textOf(document, "version", kFile, complaints);
  if (descriptor.version.empty() || descriptor.version.size() > kLongestName)
    complaints.add("descriptor-version", fmt::format("{}:version", kFile), shown(descriptor.version),
                   "the version of the package, for example 1.0.0");
  const auto licences = document.find("licenses");
  if (licences == document.end() || !licences->is_array()) return;
  for (const json& licence : *licences) {
    if (!licence.is_object()) continue;
    std::string name = textOf(licence, "name", fmt::format("{}:licenses", kFile), complaints);
    std::string title = textOf(licence, "title", fmt::format("{}:licenses", kFile), complaints);
    if (name.empty() || (!title.empty() && licenceName(title) == name)) name = std::move(title);
    if (!name.empty()) descriptor.licence += (descriptor.licence.empty() ? "" : ", ") + name;
  }
}

/// Only what this reader understands: UTF-8 and commas.
void checkDialect(const json& resource, const std::string& where, Complaints& complaints) {
  const std::string encoding = textOf(resource, "encoding", where, complaints);
  if (!encoding.empty() && encoding != "utf-8" && encoding != "UTF-8" && encoding != "utf8")
    complaints.add("resource-encoding", where + ":encoding", shown(encoding), "utf-8");
  const auto dialect = resource.find("dialect");
  if (dialect == resource.end() || !dialect->is_object()) return;
  const std::string delimiter = textOf(*dialect, "delimiter", where + ":dialect", complaints);
  if (!delimiter.empty() && delimiter != ",")
    complaints.add("resource-delimiter", where + ":dialect", shown(delimiter), "a comma");
}

void readResource(const json& resource, const std::string& where, Descriptor& descriptor, Complaints& complaints) {
  if (!resource.is_object())
    return complaints.add("resource-unreadable", where, "something else", "a resource with name and path");
  Descriptor::Resource read;
  read.table = textOf(resource, "name", where, complaints);
  read.path = textOf(resource, "path", where, complaints);
  if (tableDefinition(read.table) == nullptr) {
    std::vector<std::string> names;
    for (const TableDefinition& table : tableDefinitions()) names.push_back(table.name);
    return complaints.add("resource-unknown", where + ":name", shown(read.table),
                          "the name of a table" + perhaps(nearMisses(read.table, names)));
  }
  if (read.path.empty())
    return complaints.add("resource-path", where + ":path", "nothing", "the plain name of a CSV file");
  const auto again = [&](const Descriptor::Resource& other) {
    return other.table == read.table || other.path == read.path;
  };
  if (std::any_of(descriptor.resources.begin(), descriptor.resources.end(), again))
    return complaints.add("resource-twice", where, shown(read.table), "each table and each file once");
  checkDialect(resource, where, complaints);
  descriptor.resources.push_back(std::move(read));
}

std::size_t lineOf(std::string_view text, std::size_t byte) {
  return 1 + static_cast<std::size_t>(std::count(
                 text.begin(), text.begin() + static_cast<std::ptrdiff_t>(std::min(byte, text.size())), '\n'));
}

}  // namespace

tl::expected<Descriptor, Complaints> readDescriptor(const PackageSource& source, const Limits& limits) {
  Complaints complaints(limits.complaints);
  Descriptor descriptor;
  const auto text = source.read(kFile, limits.descriptorBytes);
  if (!text) {
    complaints.add(text.error());
    return tl::make_unexpected(std::move(complaints));
  }
  json document;
  try {
    document = json::parse(*text);
  } catch (const json::parse_error& error) {
    complaints.add("descriptor-unreadable", fmt::format("{}:{}", kFile, lineOf(*text, error.byte)),
                   "something that is not JSON", "JSON (RFC 8259)");
    return tl::make_unexpected(std::move(complaints));
  } catch (const json::out_of_range&) {  // 1e999: JSON, but no number of this machine's
    complaints.add("descriptor-unreadable", kFile, "a number that is too large", "numbers below 1.8e308");
    return tl::make_unexpected(std::move(complaints));
  }
  if (!document.is_object()) {
    complaints.add("descriptor-unreadable", kFile, "something else", "an object with name, version and resources");
    return tl::make_unexpected(std::move(complaints));
  }
  readHead(document, descriptor, complaints);
  const auto resources = document.find("resources");
  if (resources == document.end() || !resources->is_array() || resources->empty() || resources->size() > kMostResources)
    complaints.add("descriptor-resources", fmt::format("{}:resources", kFile), "none that can be read",
                   "a list of the package's files");
  else
    for (std::size_t i = 0; i < resources->size(); ++i)
      readResource((*resources)[i], fmt::format("{}:resources[{}]", kFile, i), descriptor, complaints);
  if (!complaints.none()) return tl::make_unexpected(std::move(complaints));
  return descriptor;
}

}  // namespace ohmkin::exchange
