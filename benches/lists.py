"""Times the built program on long lists, on lists of ways and on scatters, with its processor time and its memory.

Run as: cargo build --release && python3 benches/lists.py [ROWS]

ROWS is the length of the lists, 20000 unless given. Lists are written to a temporary folder and removed. Times are processor
times of all threads: on an idle machine with two cores half of it passes on the clock.
"""
import os
import random
import subprocess
import sys
import tempfile

PROGRAM = os.path.join(os.path.dirname(__file__), "..", "target", "release", "seatwise")
HEAD = "title,bearing.designation,bearing.closure,housing.bore_limits,housing.outside,housing.material"
BEARINGS = [("6204", 47), ("6205", 52), ("6206", 62), ("6207", 72), ("6208", 80), ("6304", 52), ("6305", 62), ("6306", 72)]
CHILL = ",chill.part,chill.medium,chill.hold,bench.temperature"


def press(i):
    bearing, outside = BEARINGS[i % len(BEARINGS)]
    wall = outside + random.randint(25, 55)
    return f"row {i},{bearing},open,{random.choice(['N7', 'P7', 'M7', 'K7'])},{wall} mm,cast-aluminium"


def different(i):
    """No two rows have the same bearing in the same freezer for the same time in the same shop."""
    return press(i) + f",bearing,domestic-freezer,{20 + 0.01 * (i % 16000):.2f} min,{18 + 0.001 * (i % 7919):.3f} °C"


def alike(i):
    """A shop with eight bearings and one freezer, out of which they come after one of four holds."""
    return press(i) + f",bearing,domestic-freezer,{random.choice([30, 45, 60, 120])} min,21 °C"


def timed(arguments):
    """Processor seconds and MB of a run."""
    child = subprocess.Popen([PROGRAM, *arguments], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in (0, 4):
        sys.exit(f"{arguments} ended with {child.returncode}")
    return usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024


def main():
    rows = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    random.seed(1)
    with tempfile.TemporaryDirectory() as folder:
        for name, row, more in [("press", press, ""), ("chill, alike", alike, CHILL), ("chill, all different", different, CHILL)]:
            path = os.path.join(folder, "list.csv")
            with open(path, "w", encoding="utf-8") as file:
                file.write(HEAD + more + "\n")
                file.writelines(row(i) + "\n" for i in range(rows))
            seconds, memory = timed(["batch", path, "-o", os.path.join(folder, "out.csv"), "--force"])
            print(f"batch of {rows} rows, {name}: {1000 * seconds / rows:.3f} ms a row, {2 * rows / seconds:.0f} rows/s on two "
                  f"idle cores, {memory:.0f} MB")
    for job in ["iron-hub", "pump-case"]:
        path = os.path.join(os.path.dirname(__file__), "..", "examples", job + ".toml")
        for name, arguments in [("options, every medium", ["options", path]),
                                ("options, freezer and oven", ["options", path, "--with", "freezer", "--with", "oven"]),
                                ("a million drawn parts", ["plan", path, "--draws", "1000000"])]:
            best = min(timed(arguments) for _ in range(5))
            print(f"{job}, {name}: {best[0]:.3f} s of processor, {best[1]:.0f} MB")


if __name__ == "__main__":
    main()
