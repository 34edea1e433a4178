// The three kinds of documents that are edited here, and the requests that write them.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qobject.h>
#include <QtCore/qstringlist.h>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <optional>
#include <string>

#include "client/link/replica.h"

namespace suppertide {

class Document : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("only names the kinds")
 public:
  enum Kind { Recipe, Kitchen, Starter };
  Q_ENUM(Kind)
};

using DocumentPtr = std::unique_ptr<google::protobuf::Message>;

// An empty one.
DocumentPtr makeDocument(Document::Kind kind);
// As a person would begin one: what is usual is filled in, the name is not. With a fresh id.
DocumentPtr newDocument(Document::Kind kind);
// The usual next member of the list `path` ("ovens"), with a fresh id where it has one.
void fillUsual(google::protobuf::Message& member, const google::protobuf::Message& document);

// Null when it is not there.
const google::protobuf::Message* findDocument(const link::Replica& replica, Document::Kind kind,
                                              const std::string& id);
std::string idOf(const google::protobuf::Message& document);
std::string nameOf(const google::protobuf::Message& document);
std::string etagOf(const google::protobuf::Message& document);
std::string writerOf(const google::protobuf::Message& document);

// The top-level fields (proto names) in which two documents of one kind differ; id and meta aside.
QStringList differingFields(const google::protobuf::Message& a, const google::protobuf::Message& b);
void copyField(const google::protobuf::Message& from, const std::string& field,
               google::protobuf::Message& to);

DocumentPtr createRequest(Document::Kind kind, const google::protobuf::Message& document, bool validateOnly);
// Empty `fields`: the whole document.
DocumentPtr updateRequest(Document::Kind kind, const google::protobuf::Message& document,
                          const QStringList& fields, bool validateOnly);
// The fields that a request to create or update writes: of its mask, or all that are set.
QStringList maskedFields(const google::protobuf::Message& request);
// The kind that such a request, or one to delete, is about; absent: none of these.
std::optional<Document::Kind> kindOf(const google::protobuf::Message& request);
DocumentPtr deleteRequest(Document::Kind kind, const std::string& id, const std::string& etag);

}  // namespace suppertide
