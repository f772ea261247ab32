"""A mixed piece with queues, written for a general-purpose simulator (SimPy), to compare the floor with.

Reads one JSON object from the standard input:
  constants  of the body model
  places     counts of each kind of place
  people     per person: body figures, late_s, transition_s, rounds and the lines of one round, each with
             amount, place (or -1) and effort
  spread     log-SD of every single line of work (0: no luck)
  reaction   s, the latest reaction to the start signal
  runs       how many classes to play
Writes {"home": [[per person] per run], "wait": [...], "seconds": spent on playing}.
"""

import json
import math
import random
import sys
import time

import simpy

from body_twin import Body


def lucky(effort, spread, luck):
    if spread <= 0:
        return effort
    stretch = math.exp(spread * luck.gauss(0, 1))
    return dict(effort, brisk=effort["brisk"] * stretch, sustained=effort["sustained"] * stretch,
                cost=effort["cost"] * stretch)


def rest(env, body, seconds):
    body.rest(seconds)
    return env.timeout(seconds)


def one_line(env, body, line, effort, shortest_break):
    """Sets and breaks until the line is done."""
    left = line["amount"]
    ready = body.ready_in(effort, left)
    if ready > 0:
        yield rest(env, body, ready)
    while True:
        units, seconds = body.work(effort, left)
        yield env.timeout(seconds)
        left -= units
        if left <= 1e-9:
            return
        yield rest(env, body, max(shortest_break, body.ready_in(effort, left)))


def person(env, one, world, places, luck, result):
    body = Body(one, world["constants"])
    yield env.timeout(one["late_s"])
    if world["reaction"] > 0:
        yield rest(env, body, luck.uniform(0, world["reaction"]))
    waited, last = 0.0, None
    for _ in range(one["rounds"]):
        for number, line in enumerate(one["lines"]):
            effort = lucky(line["effort"], world["spread"], luck)
            if last is not None and last != number:
                yield rest(env, body, one["transition_s"])
            last = number
            shortest = world["constants"]["shortest_break"]
            if line["place"] < 0:
                yield from one_line(env, body, line, effort, shortest)
                continue
            with places[line["place"]].request() as turn:
                came = env.now
                yield turn
                waited += env.now - came
                body.rest(env.now - came)
                yield from one_line(env, body, line, effort, shortest)
    result.append((env.now, waited))


def play(world, luck):
    env = simpy.Environment()
    places = [simpy.Resource(env, capacity=count) for count in world["places"]]
    results = [[] for _ in world["people"]]
    for one, result in zip(world["people"], results):
        env.process(person(env, one, world, places, luck, result))
    env.run()
    return [result[0] for result in results]


def main():
    world = json.load(sys.stdin)
    luck = random.Random(5)
    start = time.perf_counter()
    runs = [play(world, luck) for _ in range(world["runs"])]
    spent = time.perf_counter() - start
    json.dump({"home": [[home for home, _ in run] for run in runs],
               "wait": [[wait for _, wait in run] for run in runs], "seconds": spent}, sys.stdout)


if __name__ == "__main__":
    main()
