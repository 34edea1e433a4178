// What the command line says.
#pragma once

#include <QtCore/qsize.h>
#include <QtCore/qstring.h>
#include <QtCore/qstringlist.h>

#include <filesystem>
#include <optional>
#include <string>

#include "client/link/credentials.h"
#include "client/link/link.h"
#include "client/words/instant.h"

namespace suppertide {

struct WindowOptions {
  enum class Scheme { kSystem, kLight, kDark };
  enum class View { kFirst, kAll, kNow, kServing };

  link::LinkOptions link;
  // How `link` was saved on this device; empty name: it was not.
  link::KnownServer known;
  std::filesystem::path store;  // where this household is kept for an offline start; empty: nowhere
  // No household is saved here: the window asks. Nothing in `link` then.
  bool firstRun = false;
  // Where other devices come in once they are let in to a household of this computer.
  std::string network = "0.0.0.0:50710";
  QString settings;  // file of the person's preferences; empty: they are not kept
  QString language;  // for this time; empty: as preferred
  std::string eventId;
  std::optional<Instant> at;  // a clock that stands still
  Scheme scheme = Scheme::kSystem;
  View view = View::kFirst;
  QString screen = QStringLiteral("timeline");  // key of the screen to begin with
  QString step;                                 // whose details are open; empty: none
  QString document;  // a recipe, kitchen or starter to open on the kitchen screen; empty: none
  QSize size{1280, 800};
  QString screenshot;  // file to write; empty: a window for people
};

struct ParsedOptions {
  WindowOptions options;
  QString text;       // to be printed; help and version, or what is wrong
  int exitCode = -1;  // -1: go on
};

// Fills in `link`, `known` and `store` for a saved household.
void useSaved(const link::KnownServer& server, WindowOptions& options);

// Reads the token, the certificate or the saved servers as asked for. 0 for help
// and version, 2 for a mistake in the words, 1 for a file that can't be used.
// Needs an application object.
ParsedOptions parseOptions(const QStringList& arguments);

}  // namespace suppertide
