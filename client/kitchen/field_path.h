// Reading and writing one field of a document by its path: "steps[2].oven.setpointCelsius".
//
// Paths are those in which the server tells what is wrong with a document: JSON names,
// indices from 0. A path that leads nowhere reads as absent and writes nothing. Lengths
// (Duration) are numbers of minutes here, instants (Timestamp) numbers of seconds since 1970.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qlist.h>
#include <QtCore/qstring.h>

namespace suppertide {

class FieldPath {
 public:
  // `root` outlives it. With `make`, messages on the way are made; otherwise they read as their defaults.
  static FieldPath in(const google::protobuf::Message& root, const QString& path);
  static FieldPath inOrMake(google::protobuf::Message& root, const QString& path);

  bool valid() const { return field_ != nullptr; }
  // Given at all: of fields that can be absent, and of members of lists.
  bool present() const;
  double number() const;
  QString text() const;  // a list of words: with commas between
  bool flag() const;
  int choice() const;        // of an enum
  QList<int> marks() const;  // of a list of enums
  int count() const;         // of a list
  // Of a list of messages; else null.
  const google::protobuf::Message* member(int index) const;

  // Each needs inOrMake().
  void setNumber(double value);
  void setText(const QString& value);
  void setFlag(bool value);
  void setChoice(int value);
  void toggleMark(int value);
  void clear();
  // Of a list of messages: the new last one; else null.
  google::protobuf::Message* append();
  // Of a list of numbers.
  void appendNumber(double value);
  void remove(int index);
  void move(int from, int to);

 private:
  static FieldPath walk(google::protobuf::Message& root, const QString& path, bool make);
  const google::protobuf::Reflection& reflection() const { return *message_->GetReflection(); }
  // The Duration or Timestamp that the field is, to be read; null for others.
  const google::protobuf::Message* lengthOrTime() const;

  google::protobuf::Message* message_ = nullptr;  // that has the field; not written unless made
  const google::protobuf::FieldDescriptor* field_ = nullptr;
  int index_ = -1;  // in a list; -1: the field itself
};

}  // namespace suppertide
