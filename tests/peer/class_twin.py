"""The floor's queues, written for a general-purpose simulator (SimPy), to compare results with.

Reads one JSON object from the standard input:
  places  counts of each kind of place
  people  per person: late_s, transition_s, rounds, steps = [[middle seconds, place or -1], ...]
  spread  log-SD of every single stretch of work (0: no noise)
  runs    how many classes to play
Writes {"home": [[per person] per run], "wait": [[per person] per run]}, seconds.
"""

import json
import math
import random
import sys

import simpy


def person(env, one, places, spread, luck, result):
    yield env.timeout(one["late_s"])
    waited = 0.0
    last = None
    for _ in range(one["rounds"]):
        for number, (seconds, place) in enumerate(one["steps"]):
            if last is not None and last != number:
                yield env.timeout(one["transition_s"])
            last = number
            took = seconds * math.exp(spread * luck.gauss(0, 1)) if spread > 0 else seconds
            if place < 0:
                yield env.timeout(took)
                continue
            with places[place].request() as turn:
                came = env.now
                yield turn
                waited += env.now - came
                yield env.timeout(took)
    result.append((env.now, waited))


def play(world, luck):
    env = simpy.Environment()
    places = [simpy.Resource(env, capacity=count) for count in world["places"]]
    results = [[] for _ in world["people"]]
    for one, result in zip(world["people"], results):
        env.process(person(env, one, places, world["spread"], luck, result))
    env.run()
    return [result[0] for result in results]


def main():
    world = json.load(sys.stdin)
    luck = random.Random(5)
    runs = [play(world, luck) for _ in range(world["runs"])]
    json.dump({"home": [[home for home, _ in run] for run in runs],
               "wait": [[wait for _, wait in run] for run in runs]}, sys.stdout)


if __name__ == "__main__":
    main()
