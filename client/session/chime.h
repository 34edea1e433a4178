// A short sound of two notes, for reminders that the desktop does not ring for.
//
// Played by whichever player the desktop has: pw-play, paplay or aplay. None of them: it stays silent.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qtemporaryfile.h>

#include <memory>

namespace suppertide {

class Chime : public QObject {
  Q_OBJECT
 public:
  using QObject::QObject;

  // Starts the sound and does not wait for it. False: nothing here can play it.
  bool ring();
  // The sound as a WAV file, 16 bits, one channel.
  static QByteArray wave();

 private:
  std::unique_ptr<QTemporaryFile> file_;  // made at the first ring, gone with this object
};

}  // namespace suppertide
