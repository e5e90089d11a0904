#pragma once
#include <catalog/catalogue.h>
#include <desk/file_thread.h>
#include <workflow/vocabulary.h>

/// A page's own thread with its own read-only catalogue, so that the window never waits.
namespace ohmkin::desk {

struct OpenCatalogue {
  explicit OpenCatalogue(const std::filesystem::path& file)
      : catalogue(catalog::Catalogue::openToRead(file)), vocabulary(catalogue) {}
  catalog::Catalogue catalogue;
  workflow::Vocabulary vocabulary;
};

using CatalogueThread = ThreadWith<OpenCatalogue>;

/// Text of the use cases, for Qt.
QString plain(const std::string& text);
/// The same, to be read and not to be typed on: a number and its unit stay on one line.
QString shown(const std::string& text);
/// A refusal for a person at the window: fields by their names, not as arguments of the terminal.
QString refusalSentence(const Refusal& refusal);

}  // namespace ohmkin::desk
