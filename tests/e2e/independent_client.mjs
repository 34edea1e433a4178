// Drives a running server with gRPC's own JavaScript stack: another HTTP/2 and
// another protobuf implementation than the server's. Throws where a promise does
// not hold.
//
//   node independent_client.mjs MODULES PROTOS GRPC_PROTOS TARGET HOST_CODE[.FINGERPRINT] BUNDLE.json
//
// MODULES is a folder with node_modules, PROTOS the project's proto folder,
// GRPC_PROTOS the one of Debian's grpc-proto. Exits with 77 when something is missing.
import assert from 'node:assert/strict';
import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { connect } from 'node:tls';

const [modules, protos, grpcProtos, target, hostCode, bundleFile] = process.argv.slice(2);
if (!existsSync(join(modules, 'node_modules/@grpc/grpc-js')) || !existsSync(join(grpcProtos, 'grpc'))) {
  console.log('skipped: @grpc/grpc-js or grpc-proto is not installed');
  process.exit(77);
}
const require = createRequire(join(modules, 'package.json'));
const grpc = require('@grpc/grpc-js');
const loader = require('@grpc/proto-loader');
const protobuf = require('protobufjs');

const kSeconds = 60;
const kNouns = ['Household', 'Kitchen', 'Starter', 'Recipe', 'Event', 'Plan', 'Progress', 'Sync', 'Bread', 'Menu'];
const kServices = kNouns.map((noun) => `suppertide.v1.${noun}Service`);
const kOptions = { longs: Number, enums: String, defaults: false, oneofs: true };

function load(folder, files) {
  const options = { ...kOptions, includeDirs: [folder] };
  return grpc.loadPackageDefinition(loader.loadSync(files, options));
}

// Of the standard JSON mapping, what a bundle uses and protobufjs does not read: times and lengths as text.
function fromJson(type, json) {
  const out = {};
  for (const [name, value] of Object.entries(json)) {
    const field = type.fields[name];
    assert.ok(field, `${type.name} has no field ${name}`);
    const one = (item) => {
      const inner = field.resolve().resolvedType;
      if (!(inner instanceof protobuf.Type)) return item;
      if (inner.fullName === '.google.protobuf.Duration') return lengthOf(item);
      if (inner.fullName === '.google.protobuf.Timestamp') return instantOf(item);
      return fromJson(inner, item);
    };
    if (Array.isArray(value)) out[name] = value.map(one);
    else if (field.map) out[name] = Object.fromEntries(Object.entries(value).map(([k, v]) => [k, one(v)]));
    else out[name] = one(value);
  }
  return out;
}

function lengthOf(text) {
  const seconds = Number(text.replace(/s$/, ''));
  return { seconds: Math.trunc(seconds), nanos: Math.round((seconds % 1) * 1e9) };
}

function instantOf(text) {
  const milliseconds = Date.parse(text);
  return { seconds: Math.floor(milliseconds / 1000), nanos: (((milliseconds % 1000) + 1000) % 1000) * 1e6 };
}

function readBundle() {
  const root = new protobuf.Root();
  root.resolvePath = (_, wanted) => (wanted.startsWith('google/') && protobuf.common.get(wanted) ? wanted : join(protos, wanted));
  root.loadSync('suppertide/v1/bundle.proto').resolveAll();
  return fromJson(root.lookupType('suppertide.v1.Bundle'), JSON.parse(readFileSync(bundleFile, 'utf8')));
}

// The certificate that the server shows, if its fingerprint is the host code's.
function pinnedCertificate(fingerprint) {
  const [host, port] = target.split(':');
  return new Promise((resolve, reject) => {
    const socket = connect({ host, port: Number(port), servername: 'localhost', rejectUnauthorized: false, ALPNProtocols: ['h2'] }, () => {
      const shown = socket.getPeerCertificate();
      socket.end();
      const digits = shown.fingerprint256.replaceAll(':', '').toLowerCase();
      if (digits !== fingerprint) return reject(new Error(`the server shows certificate ${digits}`));
      const lines = shown.raw.toString('base64').match(/.{1,64}/g).join('\n');
      return resolve(Buffer.from(`-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`));
    });
    socket.on('error', reject);
  });
}

const fingerprint = hostCode.split('.')[1];
const credentials = fingerprint
  ? grpc.credentials.createSsl(await pinnedCertificate(fingerprint))
  : grpc.credentials.createInsecure();
const deadline = () => ({ deadline: Date.now() + kSeconds * 1000 });
const metadata = new grpc.Metadata();

function unary(client, method, request) {
  return new Promise((resolve, reject) => {
    client[method](request, metadata, deadline(), (error, answer) => (error ? reject(error) : resolve(answer)));
  });
}

// One answer to the parts of a request.
function send(client, method, ...parts) {
  return new Promise((resolve, reject) => {
    const call = client[method](metadata, deadline(), (error, answer) => (error ? reject(error) : resolve(answer)));
    for (const part of parts) call.write(part);
    call.end();
  });
}

async function refusal(client, method, request, make = unary) {
  try {
    await make(client, method, request);
  } catch (error) {
    return error;
  }
  return assert.fail(`${method} was not refused`);
}

async function listServices() {
  const reflection = load(join(grpcProtos, 'grpc/reflection/v1alpha'), ['reflection.proto']).grpc.reflection.v1alpha;
  const client = new reflection.ServerReflection(target, credentials);
  const call = client.ServerReflectionInfo(new grpc.Metadata(), deadline());
  const answers = [];
  call.write({ listServices: '' });
  call.end();
  for await (const answer of call) answers.push(answer);
  client.close();
  return answers[0].listServicesResponse.service.map((service) => service.name);
}

async function checkHealth() {
  const { Health } = load(join(grpcProtos, 'grpc/health/v1'), ['health.proto']).grpc.health.v1;
  const client = new Health(target, credentials);
  for (const service of ['', ...kServices]) {
    const answer = await unary(client, 'Check', { service });
    assert.equal(answer.status, 'SERVING', `${service} is not serving`);
  }
  client.close();
}

async function found(households, bundle) {
  assert.equal((await refusal(households, 'WhoAmI', {})).code, grpc.status.UNAUTHENTICATED);
  const { id, ...household } = bundle.household;
  const made = await unary(households, 'CreateHousehold', { hostCode, household, requestId: randomUUID() });
  metadata.set('authorization', `Bearer ${made.deviceToken}`);
  return made.household.id;
}

async function plan(plans, householdId, eventId) {
  const request = { householdId, eventId, timeLimit: { seconds: 8 }, requestId: randomUUID() };
  const messages = [];
  for await (const message of plans.MakePlan(request, metadata, deadline())) messages.push(message);
  const last = messages.at(-1);
  assert.ok(last.final && messages.slice(0, -1).every((message) => !message.final), 'final is not last alone');
  const stored = await unary(plans, 'GetPlan', { householdId, eventId });
  assert.deepEqual(stored, last.plan);
  return stored;
}

// A copy by following a watch from `afterRevision` until `until` is delivered.
async function follow(sync, householdId, afterRevision, until) {
  const call = sync.Watch({ householdId, afterRevision }, metadata, deadline());
  const plans = {};
  try {
    for await (const message of call) {
      const changes = message.snapshot?.documents ?? message.changes?.changes ?? [];
      for (const change of changes) if (change.plan) plans[change.plan.id] = change.plan;
      if ((message.bookmark?.revision ?? 0) >= until) break;
    }
  } catch (error) {
    if (error.code !== grpc.status.CANCELLED) throw error;
  } finally {
    call.cancel();
  }
  return plans;
}

function checkPlan(stored, bundle) {
  const [event] = bundle.events;
  const recipes = Object.fromEntries(bundle.recipes.map((recipe) => [recipe.id, recipe]));
  const unserved = new Set((stored.unserved ?? []).map((dish) => dish.dishId));
  const wanted = event.dishes
    .filter((dish) => !unserved.has(dish.id))
    .flatMap((dish) => recipes[dish.recipeId].steps.map((step) => `${dish.id}/${step.id}`));
  // What is taken out of fridge or freezer ahead of a step is a step that the plan adds: "dish/step.fetch".
  const planned = stored.steps.map((step) => step.id).filter((id) => !id.includes('.fetch'));
  assert.deepEqual(planned.sort(), wanted.sort());
  for (const step of stored.steps) {
    assert.ok(step.startTime?.seconds > 0 && step.endTime?.seconds > 0, `${step.id} lacks a time`);
    assert.ok(step.startTime.seconds <= step.endTime.seconds, `${step.id} ends before it starts`);
  }
  return wanted.length;
}

console.log(`grpc-js ${require('@grpc/grpc-js/package.json').version}, node ${process.version}`);
const services = await listServices();
for (const service of kServices) assert.ok(services.includes(service), `${service} is not listed`);
await checkHealth();

const api = load(protos, kNouns.map((noun) => `suppertide/v1/${noun.toLowerCase()}_service.proto`)).suppertide.v1;
const open = (noun) => new api[`${noun}Service`](target, credentials);
const [households, plans, sync] = [open('Household'), open('Plan'), open('Sync')];
const bundle = readBundle();
const householdId = await found(households, bundle);
const { events, ...rest } = bundle;
const first = { householdId, bundle: rest, requestId: randomUUID(), partial: true };
const broken = await refusal(households, 'ImportBundle', first, send);
assert.equal(broken.code, grpc.status.INVALID_ARGUMENT);
const imported = await send(households, 'ImportBundle', first, { bundle: { events } });
assert.equal(imported.writtenCounts.recipe, bundle.recipes.length);
bundle.recipes[0].servingCount = -1;
const refused = await refusal(households, 'ImportBundle', { householdId, bundle, requestId: randomUUID() }, send);
assert.equal(refused.code, grpc.status.INVALID_ARGUMENT);
assert.match(refused.details, /recipes\[0\]\.servingCount/);
assert.equal(refused.metadata.get('suppertide-error-bin').length, 1);

const eventId = bundle.events[0].id;
const stored = await plan(plans, householdId, eventId);
const steps = checkPlan(stored, bundle);
const audit = await unary(plans, 'AuditPlan', { householdId, eventId });
assert.deepEqual(audit.breaches ?? [], []);
assert.deepEqual(audit.costs, stored.quality.costs);
const revision = stored.meta.revision;
assert.deepEqual((await follow(sync, householdId, imported.revision, revision))[eventId], stored);
assert.deepEqual((await follow(sync, householdId, 0, revision))[eventId], stored);
for (const client of [households, plans, sync]) client.close();
console.log(`audit: ${steps} steps, no breach; watch: live and fetched alike`);
console.log('ok');
