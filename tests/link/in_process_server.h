// A real gRPC server on a loopback port that the system picks.
#pragma once

#include <grpcpp/security/server_credentials.h>
#include <grpcpp/server.h>
#include <grpcpp/server_builder.h>

#include <chrono>
#include <memory>
#include <string>

namespace suppertide::link::testing {

class InProcessServer {
 public:
  // `port` 0 picks one.
  explicit InProcessServer(grpc::Service& service, int port = 0) {
    grpc::ServerBuilder builder;
    builder.AddListeningPort("127.0.0.1:" + std::to_string(port), grpc::InsecureServerCredentials(), &port_);
    builder.RegisterService(&service);
    server_ = builder.BuildAndStart();
  }
  ~InProcessServer() { stop(); }
  InProcessServer(const InProcessServer&) = delete;
  InProcessServer& operator=(const InProcessServer&) = delete;

  // Open calls are cancelled.
  void stop() {
    if (server_ != nullptr) server_->Shutdown(std::chrono::system_clock::now());
    server_.reset();
  }
  int port() const { return port_; }
  std::string target() const { return "127.0.0.1:" + std::to_string(port_); }

 private:
  int port_ = 0;
  std::unique_ptr<grpc::Server> server_;
};

}  // namespace suppertide::link::testing
