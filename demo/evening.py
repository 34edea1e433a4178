#!/usr/bin/env python3
"""Reads an exported household with a planned event and reports its evening up to a time.

    evening.py TIME <exported.json >with-reports.json

Every step that the plan ends by TIME is reported as finished, a minute or two off; every step under way
as started; doughs as risen half way. So the screens have something to show at that time.
"""
import datetime
import json
import sys


def at(text):
    return datetime.datetime.fromisoformat(text.replace("Z", "+00:00"))


def stamp(time):
    return time.astimezone(datetime.timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")


def reports(plan, now):
    for number, step in enumerate(plan["steps"]):
        start, limit = at(step["startTime"]), at(step["endTime"])
        if step.get("leftOut") or start > now:
            continue
        told = {"dishId": step["dishId"], "stepId": step["stepId"], "memberId": step.get("cookMemberId", "")}
        off = datetime.timedelta(minutes=number % 3)
        if limit + off <= now:
            yield {**told, "id": f"finished-{number}", "finished": True, "happenTime": stamp(limit + off)}
            continue
        yield {**told, "id": f"started-{number}", "started": True, "happenTime": stamp(start)}
        if step["kind"] == "STEP_KIND_FERMENT" and limit - start > datetime.timedelta(minutes=60):
            seen = now - (now - start) / 3
            yield {**told, "id": f"rise-{number}", "rise": 1.4, "happenTime": stamp(seen)}


def main():
    now = at(sys.argv[1])
    bundle = json.load(sys.stdin)
    known = {member["id"] for member in bundle["household"]["members"]}
    bundle["progresses"] = []
    for plan in bundle.get("plans", []):
        told = sorted(reports(plan, now), key=lambda report: report["happenTime"])
        for report in told:
            if report["memberId"] not in known:
                del report["memberId"]
        bundle["progresses"].append({"id": plan["id"], "reports": told})
    json.dump(bundle, sys.stdout, indent=1)


if __name__ == "__main__":
    main()
