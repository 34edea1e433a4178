"""Drives a running server from outside, knowing nothing of it but its address.

Uses no generated code of the project: the services and messages come from the
server's own reflection, and the dinner from a bundle in JSON. Every promise that
does not hold raises; silence would prove nothing, so the outcome is printed.

  independent_client.py TARGET HOST_CODE[.FINGERPRINT] BUNDLE.json REFLECTION_FOLDER

REFLECTION_FOLDER holds the Python code of gRPC's reflection and health protos.
"""
import hashlib
import ssl
import sys
import time
import uuid

import grpc
from google.protobuf import descriptor_pb2, descriptor_pool, json_format, message_factory

SECONDS = 60
ERROR_TRAILER = "suppertide-error-bin"
OUR_SERVICES = {
    "suppertide.v1." + name + "Service"
    for name in ("Household", "Kitchen", "Starter", "Recipe", "Event", "Plan", "Progress", "Sync", "Bread",
                 "Menu")
}


def check(holds, text):
    if not holds:
        raise AssertionError(text)


def reflect(channel, reflection_pb2):
    """Lists the services and fetches every file that defines them."""
    call = channel.stream_stream(
        "/grpc.reflection.v1alpha.ServerReflection/ServerReflectionInfo",
        request_serializer=reflection_pb2.ServerReflectionRequest.SerializeToString,
        response_deserializer=reflection_pb2.ServerReflectionResponse.FromString)

    def ask(**question):
        answers = list(call(iter([reflection_pb2.ServerReflectionRequest(**question)]), timeout=SECONDS))
        check(len(answers) == 1 and not answers[0].HasField("error_response"), "reflection refused %s" % question)
        return answers[0]

    services = {s.name for s in ask(list_services="").list_services_response.service}
    pool = descriptor_pool.DescriptorPool()
    added = set()

    def add(file):
        if file.name in added:
            return
        added.add(file.name)
        for needed in file.dependency:
            if needed not in added:
                add_all(ask(file_by_filename=needed), needed)
        pool.Add(file)

    def add_all(answer, wanted):
        files = [descriptor_pb2.FileDescriptorProto.FromString(raw)
                 for raw in answer.file_descriptor_response.file_descriptor_proto]
        for file in sorted(files, key=lambda f: f.name != wanted):
            add(file)

    for service in sorted(services & OUR_SERVICES):
        add_all(ask(file_containing_symbol=service), "")
    return services, pool


class Api:
    """Calls by name, with messages made from the reflected descriptors."""

    def __init__(self, channel, pool):
        self.channel, self.pool = channel, pool
        self.factory = message_factory.MessageFactory(pool)
        self.metadata = ()

    def message(self, name):
        return self.factory.GetPrototype(self.pool.FindMessageTypeByName("suppertide.v1." + name))

    def method(self, path, streams=False):
        service, name = path.split("/")
        described = self.pool.FindServiceByName("suppertide.v1." + service).FindMethodByName(name)
        request = self.factory.GetPrototype(described.input_type)
        answer = self.factory.GetPrototype(described.output_type)
        make = self.channel.unary_stream if streams else self.channel.unary_unary
        call = make("/suppertide.v1." + path, request_serializer=request.SerializeToString,
                    response_deserializer=answer.FromString)
        return request, call

    def __call__(self, path, **fields):
        request, call = self.method(path)
        return call(request(**fields), metadata=self.metadata, timeout=SECONDS)

    def stream(self, path, **fields):
        request, call = self.method(path, streams=True)
        return call(request(**fields), metadata=self.metadata, timeout=SECONDS)

    def send(self, path, *parts):
        """One answer to the parts of a request, each a dict of fields."""
        service, name = path.split("/")
        described = self.pool.FindServiceByName("suppertide.v1." + service).FindMethodByName(name)
        request = self.factory.GetPrototype(described.input_type)
        answer = self.factory.GetPrototype(described.output_type)
        call = self.channel.stream_unary("/suppertide.v1." + path, request_serializer=request.SerializeToString,
                                         response_deserializer=answer.FromString)
        return call(iter([request(**part) for part in parts]), metadata=self.metadata, timeout=SECONDS)

    def refusal(self, path, *parts, **fields):
        """The code and the detail that a call is refused with."""
        try:
            self.send(path, *parts) if parts else self(path, **fields)
        except grpc.RpcError as error:
            detail = self.message("ErrorDetail")()
            for key, value in error.trailing_metadata() or ():
                if key == ERROR_TRAILER:
                    detail.ParseFromString(value)
            return error.code(), detail
        raise AssertionError(path + " was not refused")


def fresh():
    return str(uuid.uuid4())


def check_health(channel, health_pb2):
    call = channel.unary_unary("/grpc.health.v1.Health/Check",
                               request_serializer=health_pb2.HealthCheckRequest.SerializeToString,
                               response_deserializer=health_pb2.HealthCheckResponse.FromString)
    for service in [""] + sorted(OUR_SERVICES):
        answer = call(health_pb2.HealthCheckRequest(service=service), timeout=SECONDS)
        check(answer.status == health_pb2.HealthCheckResponse.SERVING, "%r is not serving" % service)


def found(api, code, bundle):
    """Makes the household; afterwards the calls carry its token."""
    household = api.message("Household")()
    household.CopyFrom(bundle.household)
    household.id = ""
    refused, detail = api.refusal("HouseholdService/WhoAmI")
    check(refused == grpc.StatusCode.UNAUTHENTICATED, "a call without a token gave %s" % refused)
    refused, detail = api.refusal("HouseholdService/CreateHousehold", host_code="AAAA-AAAA-AAAA",
                                  household=household, request_id=fresh())
    check(refused == grpc.StatusCode.PERMISSION_DENIED and detail.reason == "WRONG_CODE", "a wrong code was taken")
    made = api("HouseholdService/CreateHousehold", host_code=code.lower(), household=household,
               device_name="an independent client", request_id=fresh())
    api.metadata = (("authorization", "Bearer " + made.device_token),)
    who = api("HouseholdService/WhoAmI")
    check(who.household_id == made.household.id and who.member_id == made.member_id, "WhoAmI tells someone else")
    return made.household.id


def without_meta(document):
    copy = type(document)()
    copy.CopyFrom(document)
    copy.ClearField("meta")
    return copy


def import_bundle(api, household, bundle):
    """Imports; then what is exported is what was given. Returns the revision."""
    path = "HouseholdService/ImportBundle"
    refused, detail = api.refusal(path, dict(household_id="another", bundle=bundle, request_id=fresh()))
    check(refused == grpc.StatusCode.PERMISSION_DENIED, "another household gave %s" % refused)
    spoiled = api.message("Bundle")()
    spoiled.CopyFrom(bundle)
    spoiled.recipes[0].serving_count = -1
    spoiled.events[0].kitchen_id = "nowhere"
    refused, detail = api.refusal(path, dict(household_id=household, bundle=spoiled, request_id=fresh()))
    check(refused == grpc.StatusCode.INVALID_ARGUMENT, "a spoiled bundle gave %s" % refused)
    paths = {violation.field_path for violation in detail.violations}
    check({"recipes[0].servingCount", "events[0].kitchenId"} <= paths, "mistakes told: %s" % paths)

    request = fresh()
    made = api.send(path, dict(household_id=household, bundle=bundle, request_id=request))
    first, second = api.message("Bundle")(), api.message("Bundle")()
    first.CopyFrom(bundle)
    first.ClearField("events")
    second.events.extend(bundle.events)
    parts = (dict(household_id=household, bundle=first, request_id=request, partial=True), dict(bundle=second))
    check(api.send(path, *parts).revision == made.revision, "a repeated request was carried out again")
    refused, detail = api.refusal(path, parts[0])
    check(refused == grpc.StatusCode.INVALID_ARGUMENT, "a bundle without its last part gave %s" % refused)
    exported = api.message("Bundle")()
    for part in api.stream("HouseholdService/ExportBundle", household_id=household):
        exported.MergeFrom(part)
    for kind in ("kitchens", "starters", "recipes", "events"):
        given = {document.id: without_meta(document) for document in getattr(bundle, kind)}
        kept = {document.id: without_meta(document) for document in getattr(exported, kind)}
        check(given == kept, "%s did not come back as they were given" % kind)
    return made.revision


def check_stale_etag(api, household):
    recipes = api("RecipeService/ListRecipes", household_id=household, page_size=1)
    check(len(recipes.recipes) == 1, "a page of one has %d" % len(recipes.recipes))
    recipe = recipes.recipes[0]
    recipe.note = "written by an independent client"
    written = api("RecipeService/UpdateRecipe", household_id=household, recipe=recipe, request_id=fresh())
    refused, detail = api.refusal("RecipeService/UpdateRecipe", household_id=household, recipe=recipe,
                                  request_id=fresh())
    check(refused == grpc.StatusCode.ABORTED and detail.reason == "STALE_ETAG", "a stale etag gave %s" % refused)
    check(detail.metadata["etag"] == written.recipe.meta.etag, "the refusal names another etag")
    return written.revision


def make_plan(api, household, event):
    """Plans; the last message is the final one and what is stored."""
    request = api.message("MakePlanRequest")(household_id=household, event_id=event, request_id=fresh())
    request.time_limit.seconds = 8
    _, call = api.method("PlanService/MakePlan", streams=True)
    begun = time.monotonic()
    messages, first_plan = [], None
    for message in call(request, metadata=api.metadata, timeout=SECONDS):
        if message.HasField("plan") and first_plan is None:
            first_plan = time.monotonic() - begun
        messages.append(message)
    check([m.final for m in messages] == [False] * (len(messages) - 1) + [True], "final is not last alone")
    check(time.monotonic() - begun < 20, "planning took more than its 8 seconds")
    stored = api("PlanService/GetPlan", household_id=household, event_id=event)
    check(stored == messages[-1].plan, "the final plan is not the stored one")
    check(stored.meta.revision == messages[-1].revision, "the final revision is not the plan's")
    print("plan: %d messages, first plan after %.2f s, %s" % (
        len(messages), first_plan, json_format.MessageToDict(stored.quality)))
    return stored


def instant(timestamp):
    return timestamp.seconds + timestamp.nanos * 1e-9


def check_plan(api, household, bundle, plan):
    event = bundle.events[0]
    recipes = {recipe.id: recipe for recipe in bundle.recipes}
    unserved = {dish.dish_id for dish in plan.unserved}
    wanted = {dish.id + "/" + step.id for dish in event.dishes if dish.id not in unserved
              for step in recipes[dish.recipe_id].steps}
    # What is taken out of fridge or freezer ahead of a step is a step that the plan adds: "dish/step.fetch".
    planned = {step.id for step in plan.steps if ".fetch" not in step.id}
    check(planned == wanted, "the plan's steps are not those of its dishes")
    check(wanted, "the plan is empty")
    starts = []
    for step in plan.steps:
        check(step.HasField("start_time") and step.HasField("end_time"), step.id + " lacks a time")
        check(instant(step.start_time) <= instant(step.end_time), step.id + " ends before it starts")
        check(instant(step.start_time) >= instant(event.work_start_time), step.id + " is before work starts")
        starts.append(instant(step.start_time))
    check(starts == sorted(starts), "the steps are not in order of time")
    for course in plan.courses:
        check(instant(course.ready_time) <= instant(course.serving_time), course.course_id + " is served unready")
    check(not plan.breaches, "the plan has breaches")
    audit = api("PlanService/AuditPlan", household_id=household, event_id=event.id)
    check(not audit.breaches, "the auditor found %s" % audit.breaches)
    check(audit.costs == plan.quality.costs, "the auditor computes other costs")
    print("audit: %d steps, no breach, %d dishes unserved" % (len(plan.steps), len(unserved)))


def replica(watch, until):
    """Applies what a watch brings until `until` is delivered: documents by kind and id."""
    documents, last, live = {}, 0, False
    for message in watch:
        kind = message.WhichOneof("kind")
        if kind == "reset":
            documents = {}
        elif kind == "snapshot":
            changes = message.snapshot.documents
        elif kind == "changes":
            check(live and message.changes.revision >= last, "changes out of order")
            changes, last = message.changes.changes, message.changes.revision
        elif kind == "bookmark":
            check(message.bookmark.revision >= last, "a bookmark goes back")
            last, live = message.bookmark.revision, True
        for change in changes if kind in ("snapshot", "changes") else ():
            what = change.WhichOneof("what")
            if what == "deleted":
                documents.pop((change.deleted.kind, change.deleted.id), None)
            else:
                documents[(what, getattr(change, what).id)] = getattr(change, what)
        if last >= until and not (kind == "changes" and message.changes.partial):
            watch.cancel()
            return documents
    raise AssertionError("the watch ended before revision %d" % until)


def open_channel(target, fingerprint):
    """Over TCP with TLS, to the one server whose certificate has the fingerprint of the host code."""
    if not fingerprint:
        return grpc.insecure_channel(target)
    host, port = target.rsplit(":", 1)
    pem = ssl.get_server_certificate((host, int(port)))
    shown = hashlib.sha256(ssl.PEM_cert_to_DER_cert(pem)).hexdigest()
    check(shown == fingerprint, "the server shows certificate %s, the host code names %s" % (shown, fingerprint))
    print("TLS: certificate as in the host code")
    return grpc.secure_channel(target, grpc.ssl_channel_credentials(root_certificates=pem.encode()))


def join_with_a_lost_answer(api, household, fingerprint):
    """Asks twice under one request id: the same member, and the second token works."""
    invitation = api("HouseholdService/CreateInvitation", household_id=household, role=2, request_id=fresh())
    check(invitation.certificate_fingerprint == fingerprint, "the invitation names another certificate")
    ask = dict(code=invitation.code + "." + fingerprint, display_name="Guest cook", device_name="a phone",
               request_id=fresh())
    first, second = (api("HouseholdService/JoinHousehold", **ask) for _ in range(2))
    check(first.member_id == second.member_id, "the repeat made another member")
    host = api.metadata
    api.metadata = (("authorization", "Bearer " + second.device_token),)
    check(api("HouseholdService/WhoAmI").member_id == second.member_id, "the second token is somebody else's")
    api.metadata = (("authorization", "Bearer " + first.device_token),)
    check(api.refusal("HouseholdService/WhoAmI")[0] == grpc.StatusCode.UNAUTHENTICATED, "the lost token still works")
    api.metadata = host
    ask["request_id"] = fresh()
    check(api.refusal("HouseholdService/JoinHousehold", **ask)[1].reason == "WRONG_CODE", "a code was good twice")


def main(target, code, bundle_file, reflection_folder):
    fingerprint = code.partition(".")[2]
    sys.path.insert(0, reflection_folder)
    from grpc_health import health_pb2
    from grpc_reflection import reflection_pb2
    with open_channel(target, fingerprint) as channel:
        services, pool = reflect(channel, reflection_pb2)
        check(OUR_SERVICES <= services, "missing services: %s" % (OUR_SERVICES - services))
        check_health(channel, health_pb2)
        api = Api(channel, pool)
        with open(bundle_file, encoding="utf-8") as file:
            bundle = json_format.Parse(file.read(), api.message("Bundle")(), descriptor_pool=pool)
        household = found(api, code, bundle)
        live = api.stream("SyncService/Watch", household_id=household)
        join_with_a_lost_answer(api, household, fingerprint)
        import_bundle(api, household, bundle)
        check_stale_etag(api, household)
        plan = make_plan(api, household, bundle.events[0].id)
        check_plan(api, household, bundle, plan)
        followed = replica(live, plan.meta.revision)
        fetched = replica(api.stream("SyncService/Watch", household_id=household), plan.meta.revision)
        check(followed == fetched, "following live gives another copy than a snapshot")
        check(followed[("plan", plan.id)] == plan, "the live copy has another plan")
        print("watch: %d documents, live and fetched alike" % len(followed))


if __name__ == "__main__":
    main(*sys.argv[1:])
    print("ok")
