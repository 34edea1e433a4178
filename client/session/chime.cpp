#include "client/session/chime.h"

#include <QtCore/qdatastream.h>
#include <QtCore/qdir.h>
#include <QtCore/qmath.h>
#include <QtCore/qprocess.h>
#include <QtCore/qstandardpaths.h>

namespace suppertide {
namespace {

constexpr quint32 kRate = 22'050;           // samples a second
constexpr double kNotes[] = {659.25, 880};  // hertz: e'' and a''
constexpr double kNoteSeconds = 0.28;
constexpr double kFade = 6;  // a second, of a struck note
constexpr double kLoudness = 0.4;
constexpr int kBytes = 2;  // of a sample

QString player() {
  for (const char* program : {"pw-play", "paplay", "aplay"})
    if (const QString found = QStandardPaths::findExecutable(QString::fromLatin1(program)); !found.isEmpty())
      return found;
  return {};
}

}  // namespace

QByteArray Chime::wave() {
  const int samples = static_cast<int>(kRate * kNoteSeconds);
  const auto dataBytes = static_cast<quint32>(samples * kBytes * std::size(kNotes));
  QByteArray bytes;
  QDataStream out(&bytes, QIODevice::WriteOnly);
  out.setByteOrder(QDataStream::LittleEndian);
  out.writeRawData("RIFF", 4);
  out << static_cast<quint32>(36 + dataBytes);
  out.writeRawData("WAVEfmt ", 8);
  out << quint32{16} << quint16{1} << quint16{1} << kRate << kRate * kBytes << quint16{kBytes}
      << quint16{8 * kBytes};
  out.writeRawData("data", 4);
  out << dataBytes;
  for (const double note : kNotes) {
    for (int i = 0; i < samples; ++i) {
      const double time = static_cast<double>(i) / kRate;
      const double loud = kLoudness * qExp(-kFade * time) * qMin(1.0, time * 200);
      out << static_cast<qint16>(loud * qSin(2 * M_PI * note * time) * 32'767);
    }
  }
  return bytes;
}

bool Chime::ring() {
  const QString program = player();
  if (program.isEmpty()) return false;
  if (file_ == nullptr) {
    file_ = std::make_unique<QTemporaryFile>(QDir::tempPath() + QStringLiteral("/suppertide-XXXXXX.wav"));
    if (!file_->open() || file_->write(wave()) < 0 || !file_->flush()) {
      file_.reset();
      return false;
    }
  }
  QProcess sound;
  sound.setProgram(program);
  sound.setArguments({file_->fileName()});
  sound.setStandardOutputFile(QProcess::nullDevice());
  sound.setStandardErrorFile(QProcess::nullDevice());
  return sound.startDetached();
}

}  // namespace suppertide
