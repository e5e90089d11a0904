#pragma once
#include <workflow/document_values.h>

/// The vocabulary of --json: the same as of documents that are kept.
namespace ohmkin::cli {

using workflow::documents::document;
using workflow::documents::json;
using workflow::documents::Json;
using workflow::documents::text;

}  // namespace ohmkin::cli
