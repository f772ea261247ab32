"""The closed forms of docs/models/body.md for repetitions, written a second time: what a class in SimPy needs
to move a body through sets and rests. Same formulas, same constants (they come with the question)."""

import math

PUSH_PULL_LEGS_CORE_GRIP = 5


class Body:
    """One person's moving state. `fast`, `slow` and `pending` per muscle group."""

    def __init__(self, one, constants):
        self.c = constants
        self.recovery = one["recovery"]
        self.style = one["style_share"]
        self.critical = one["critical_rate"]
        self.full = self.reserve = one["reserve_full"]
        self.end = one["target_s"]
        self.settled = min(0.5, max(-0.5, 0.5 * math.log(max(1.0, self.end) / 240) / math.log(3)))
        self.fast = [0.0] * PUSH_PULL_LEGS_CORE_GRIP
        self.slow = [0.0] * PUSH_PULL_LEGS_CORE_GRIP
        self.pending = [0.0] * PUSH_PULL_LEGS_CORE_GRIP
        self.clock = 0.0

    def durability(self):
        c = self.c
        if self.clock < c["durability_from"]:
            return 1.0
        return (self.clock / c["durability_from"]) ** -c["durability"]

    def spend(self, seconds, rate, mode=1.0):
        """Moves the reserve; returns its mean over the stretch."""
        over = rate - self.critical * mode * self.durability()
        before = self.reserve
        if over >= 0:
            self.reserve -= over * seconds / 60
            return 0.5 * (before + self.reserve)
        time = self.c["reserve_recovery"] * 60 * self.full / -over
        left = math.exp(-seconds / time)
        missing = self.full - before
        self.reserve = self.full - missing * left
        return self.full - (missing * time * (1 - left) / seconds if seconds > 0 else missing)

    def speed(self, reserve):
        missing = 1 - max(0.0, reserve) / self.full
        return 1 / ((1 + self.c["recovery_drag"] * missing) * self.recovery)

    def rest(self, seconds):
        if seconds <= 0:
            return
        recovered = seconds * self.speed(self.spend(seconds, self.c["standing_rate"]))
        self.pending = [p + recovered for p in self.pending]
        self.clock += seconds

    def settle(self, group):
        self.fast[group] *= math.exp(-self.pending[group] / self.c["fast_time"][group])
        self.slow[group] *= math.exp(-self.pending[group] / self.c["slow_time"][group])
        self.pending[group] = 0.0

    def kept(self, effort):
        wish = max(self.c["keep_min"], self.c["keep_share"] * effort["best"])
        return min(max(0.5 * (effort["best"] - 1), 0.0), wish)

    def breath(self, effort):
        """What is out of reach of whoever is out of breath."""
        return self.c["breathless"] * (1 - effort["theta"]) * (1 - self.reserve / self.full)

    def ready_in(self, effort, left):
        """Seconds until the person takes up `left` more; 0 at once."""
        c, g = self.c, effort["group"]
        keep = self.kept(effort)
        want = min(max(1.0, math.floor(self.style * effort["best"] + 0.5)), left)
        spare = min(c["keep_min"], keep) if left <= c["finish_reps"] else keep
        needed = max(min(want + spare, 0.95 * effort["best"]), min(1.0, left) + 0.5 * spare)
        target = max(1 - effort["theta"] - needed * effort["drain"], 1e-9)
        fast = self.fast[g] * math.exp(-self.pending[g] / c["fast_time"][g])
        slow = self.slow[g] * math.exp(-self.pending[g] / c["slow_time"][g])
        breath = self.breath(effort)
        if fast + slow + breath <= target:
            return 0.0
        spare_rate = self.critical * self.durability() - c["standing_rate"]
        breath_time = c["reserve_recovery"] * 60 * self.full / spare_rate * self.speed(self.reserve)
        wanted = 0.0
        for _ in range(6):
            f = fast * math.exp(-wanted / c["fast_time"][g])
            s = slow * math.exp(-wanted / c["slow_time"][g])
            b = breath * math.exp(-wanted / breath_time)
            held = f + s + b
            slope = f / c["fast_time"][g] + s / c["slow_time"][g] + b / breath_time
            move = held / slope * math.log(held / target)
            wanted += move
            if move < 1e-3:
                break
        reserve = self.reserve
        mean = self.spend(wanted / self.speed(self.reserve), c["standing_rate"])
        self.reserve = reserve
        return wanted / self.speed(mean) + c["reaction"]

    def target_rate(self):
        c = self.c
        spare = max(0.0, self.reserve - c["reserve_kept"] * self.full)
        spread = max(c["shortest_spread"], self.end - self.clock)
        return self.critical * self.durability() + 60 * spare / spread

    def mean_target(self, seconds, mode):
        """The mean rate over a set that reaches into the last minute, where the reserve fades."""
        c, now = self.c, self.target_rate()
        shortest = c["shortest_spread"]
        until = self.end - self.clock
        even = min(max(until - shortest, 0.0), seconds)
        if even >= seconds:
            return now
        left = 1 - even / max(shortest, until)
        faded = left * (1 - math.exp(-mode * (seconds - even) / shortest)) * shortest / mode
        critical = self.critical * self.durability()
        return critical + (now - critical) * (even + faded * max(shortest, until) / shortest) / seconds

    def work(self, effort, wanted):
        """One unbroken set; returns units and seconds."""
        g = effort["group"]
        self.settle(g)
        made = Set(self, effort, wanted).made(wanted)
        self.fast[g], self.slow[g] = made.fast, made.slow
        if made.seconds > 0:
            c = self.c
            rate = c["standing_rate"] + 60 * effort["cost"] * made.units / made.seconds
            mean = self.spend(made.seconds, rate, effort["mode"])
            recovered = c["other_group_recovery"] * made.seconds * self.speed(mean)
            for other in range(PUSH_PULL_LEGS_CORE_GRIP):
                if other != g:
                    self.carry(other, effort, made.units, recovered)
            self.clock += made.seconds
        return made.units, made.seconds

    def carry(self, group, effort, units, recovered):
        if effort["weight"][group] <= 0 or units <= 0:
            self.pending[group] += recovered
            return
        self.settle(group)
        drain = effort["drain"] * effort["weight"][group]
        share = effort["fast_share"]
        kept, deposited = decay(recovered / units / self.c["fast_time"][group], units)
        self.fast[group] = self.fast[group] * kept + drain * share * deposited
        kept, deposited = decay(recovered / units / self.c["slow_time"][group], units)
        self.slow[group] = self.slow[group] * kept + drain * (1 - share) * deposited


def grown(y):
    """e^y - 1, by the series where the difference would cancel."""
    return y * (1 + y / 2 * (1 + y / 3 * (1 + y / 4))) if y < 0.03 else math.exp(y) - 1


def decay_of(y, n, kept):
    return kept, (n if y < 1e-9 else (1 - kept) / grown(y))


def decay(y, n):
    return decay_of(y, n, math.exp(-n * y))


def rough_decay(y, n):
    x = n * y
    return decay_of(y, n, 1 / (1 + x * (1 + x * (0.5 + x / 6))))


class Set:
    """One set on the own group, from the fatigue that is there."""

    def __init__(self, body, effort, wanted):
        c, g = body.c, effort["group"]
        muscle = effort["brisk"] + (effort["sustained"] - effort["brisk"]) * body.settled

        def cycle_at(rate):
            power = max(1.0, rate * effort["mode"] - c["standing_rate"])
            return max(muscle, 60 * effort["cost"] / power)

        target = body.target_rate()
        self.cycle = cycle_at(target)
        units = min(wanted, effort["best"])
        length = units * self.cycle
        if body.clock + length > body.end - c["shortest_spread"]:
            target = body.mean_target(length, effort["mode"])
            self.cycle = cycle_at(target)
            length = units * self.cycle
        over = effort["mode"] * (target - body.critical * body.durability())
        speed = body.speed(body.reserve - over * 0.5 * length / 60)
        self.brisk = muscle
        self.growth = c["fade"] / (1 - effort["theta"])
        self.fast_drain = effort["drain"] * effort["fast_share"]
        self.slow_drain = effort["drain"] * (1 - effort["fast_share"])
        self.fast_rate = speed / c["fast_time"][g]
        self.slow_rate = speed / c["slow_time"][g]
        self.drain = effort["drain"]
        self.full = 1 - effort["theta"] - body.breath(effort) + 1e-6 * effort["drain"]
        self.keep = body.kept(effort)
        self.finish = c["finish_reps"]
        self.fast, self.slow = body.fast[g], body.slow[g]
        self.units = self.seconds = 0.0

    def fatigue(self):
        return self.fast + self.slow

    def unit_seconds(self, fatigue):
        return self.brisk * (1 + self.growth * fatigue)

    def made(self, wanted):
        self.go_on(wanted, self.full - (1 + self.keep) * self.drain)
        if 0 < wanted - self.units <= self.finish:
            self.go_on(wanted, self.full - self.drain)
        return self

    def go_on(self, wanted, limit):
        if self.units < wanted and self.fatigue() <= limit and self.unit_seconds(self.fatigue()) < self.cycle:
            self.paced(wanted - self.units, limit)
        if self.units < wanted and self.fatigue() <= limit:
            self.driven(wanted - self.units, limit)

    def after(self, units, idle, how=decay):
        fast_kept, fast_deposited = how(idle * self.fast_rate, units)
        slow_kept, slow_deposited = how(idle * self.slow_rate, units)
        return (self.fast * fast_kept + self.fast_drain * fast_deposited,
                self.slow * slow_kept + self.slow_drain * slow_deposited)

    def paced(self, units, limit):
        start = self.fatigue()

        def idle_to(end, n):
            last = end - (end - start) / max(1.0, n)
            both = start + last
            typical = 2.0 / 3 * (both - start * last / both) if both > 0 else 0.0
            return max(0.0, self.cycle - self.unit_seconds(typical))

        idle = idle_to(start, units)
        for _ in range(2):
            idle = idle_to(sum(self.after(units, idle, rough_decay)), units)
        turn = min(limit, (self.cycle / self.brisk - 1) / self.growth)
        made = units
        if sum(self.after(units, idle)) > turn:
            idle = idle_to(turn, (turn - start) / (self.fast_drain + self.slow_drain))
            made = min(units, math.floor(self.units_until(turn, idle) + 1e-9) + 1)
        self.fast, self.slow = self.after(made, idle)
        self.units += made
        self.seconds += made * self.cycle

    def units_until(self, turn, idle):
        """Newton's method on the fatigue as a smooth function of the units."""
        drain = self.fast_drain + self.slow_drain
        fast_y, slow_y = idle * self.fast_rate, idle * self.slow_rate
        if slow_y < 1e-9:
            return max(0.0, (turn - self.fatigue()) / drain)
        fast_end, slow_end = self.fast_drain / grown(fast_y), self.slow_drain / grown(slow_y)
        units = max(0.0, (turn - self.fatigue()) / drain)
        for _ in range(4):
            fast_kept, slow_kept = math.exp(-units * fast_y), math.exp(-units * slow_y)
            f = fast_end + (self.fast - fast_end) * fast_kept + slow_end + (self.slow - slow_end) * slow_kept
            slope = (fast_end - self.fast) * fast_y * fast_kept + (slow_end - self.slow) * slow_y * slow_kept
            move = (turn - f) / max(slope, 0.05 * drain)
            units += move
            if abs(move) < 1e-7:
                break
        return max(0.0, units)

    def driven(self, units, limit):
        start, drain = self.fatigue(), self.fast_drain + self.slow_drain
        most = min(units, math.floor((limit - start) / drain + 1e-9) + 1)
        a = 0.5 * self.brisk * self.growth * drain
        b = self.unit_seconds(start) - a
        self.fast += most * self.fast_drain
        self.slow += most * self.slow_drain
        self.units += most
        self.seconds += most * (b + a * most)
