#include "suppertide/v1/recipe_service.grpc.pb.h"

#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class RecipeServiceCalls final : public v1::RecipeService::CallbackService {
 public:
  explicit RecipeServiceCalls(Backend& backend) : calls_(backend, "RecipeService", kMostRecipes) {}

  grpc::ServerUnaryReactor* GetRecipe(grpc::CallbackServerContext* context,
                                      const v1::GetRecipeRequest* request, v1::Recipe* answer) override {
    return calls_.get(context, request, request->recipe_id(), "GetRecipe", answer);
  }
  grpc::ServerUnaryReactor* ListRecipes(grpc::CallbackServerContext* context,
                                        const v1::ListRecipesRequest* request,
                                        v1::ListRecipesResponse* answer) override {
    return calls_.list(
        context, request, "ListRecipes", answer,
        [](v1::ListRecipesResponse* to, v1::Recipe one) { *to->add_recipes() = std::move(one); });
  }
  grpc::ServerUnaryReactor* CreateRecipe(grpc::CallbackServerContext* context,
                                         const v1::CreateRecipeRequest* request,
                                         v1::WriteRecipeResponse* answer) override {
    return calls_.create(context, request, request->recipe(), "CreateRecipe", answer,
                         answer->mutable_recipe());
  }
  grpc::ServerUnaryReactor* UpdateRecipe(grpc::CallbackServerContext* context,
                                         const v1::UpdateRecipeRequest* request,
                                         v1::WriteRecipeResponse* answer) override {
    return calls_.update(context, request, request->household_id(), request->recipe(), "UpdateRecipe", answer,
                         answer->mutable_recipe());
  }
  grpc::ServerUnaryReactor* DeleteRecipe(grpc::CallbackServerContext* context,
                                         const v1::DeleteRecipeRequest* request,
                                         v1::DeleteRecipeResponse* answer) override {
    return calls_.remove(context, request, request->recipe_id(), "DeleteRecipe", answer);
  }

 private:
  DocumentCalls<v1::Recipe> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeRecipeService(Backend& backend) {
  return std::make_unique<RecipeServiceCalls>(backend);
}

}  // namespace suppertide::service
