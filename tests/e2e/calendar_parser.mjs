// Reads calendars with ical.js, which shares no code with the writer, and compares every step's times.
//
//   node calendar_parser.mjs MODULES SAMPLES_PROGRAM
//
// MODULES is a folder with node_modules. Exits with 77 when ical.js is missing.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [modules, program] = process.argv.slice(2);
const entry = join(modules, 'node_modules/ical.js/dist/ical.js');
if (!existsSync(entry)) {
  console.log('skipped: ical.js is not installed');
  process.exit(77);
}
const ICAL = (await import(pathToFileURL(entry))).default;

let alarms = 0;
function check({ calendar, steps, odd, gone }) {
  const root = new ICAL.Component(ICAL.parse(calendar));
  ICAL.TimezoneService.reset();
  for (const zone of root.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(new ICAL.Timezone(zone));
  const entries = new Map();
  for (const component of root.getAllSubcomponents('vevent')) {
    const event = new ICAL.Event(component);
    assert(!entries.has(event.uid), `${event.uid} is there twice`);
    entries.set(event.uid, event);
    alarms += component.getAllSubcomponents('valarm').length;
  }
  const offsets = new Set();
  for (const [uid, step] of Object.entries(steps)) {
    const event = entries.get(uid);
    assert(event, `${uid} is missing`);
    assert.equal(event.startDate.toUnixTime(), step.start, uid);
    assert.equal(event.endDate.toUnixTime(), step.end, uid);
    assert.equal(event.sequence, step.sequence, uid);
    offsets.add(event.startDate.utcOffset());
  }
  const roast = entries.get(odd);
  assert(roast.summary.endsWith('Pork, slow; "crackling" \\ no rind\nsalted — “ãé”'), roast.summary);
  if (gone) {
    const event = entries.get(gone).component;
    assert.equal(event.getFirstPropertyValue('status'), 'CANCELLED');
    assert.equal(event.getAllSubcomponents('valarm').length, 0);
  }
  return offsets;
}

const samples = JSON.parse(execFileSync(program, { maxBuffer: 1 << 26 }));
assert.equal(samples.length, 3);
check(samples[0]);
assert.equal(check(samples[1]).size, 2, 'the second lies on both sides of a clock change');
check(samples[2]);
assert(samples[2].gone);
assert(alarms > 20);
console.log('ok');
