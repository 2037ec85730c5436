"""A bad line between two network namespaces where the kernel has no netem: what `tc qdisc … netem loss L delay D rate R` does at
both ends, to the IP packets of two TUN devices. TCP at both sides is the kernel's own and sees loss, delay and rate as such.

    bad_line.py NEAR FAR LOSS_PERCENT DELAY_MS RATE_BIT_PER_S SEED

NEAR becomes 10.77.0.1, FAR 10.77.0.2. The order is netem's (tc-netem(8)): a packet is lost by chance or joins a queue of at most
1000, leaves it at the rate, and arrives after the delay. Prints an address once it stands, for who waits for one, and what it
carried and lost when it is ended by SIGTERM.
"""

import fcntl
import heapq
import os
import random
import select
import signal
import struct
import subprocess
import sys
import time

# linux/if_tun.h
TUNSETIFF = 0x400454CA
IFF_TUN = 0x0001
IFF_NO_PI = 0x1000
QUEUE_MAX = 1000
PACKET_BYTES_MAX = 65536


def end_in(namespace: str, own: str, other: str) -> int:
    """A TUN device in a namespace; its packets are read and written here."""
    tun = os.open("/dev/net/tun", os.O_RDWR | os.O_NONBLOCK)
    name = f"cs{os.getpid()}{own[-1]}"
    fcntl.ioctl(tun, TUNSETIFF, struct.pack("16sH", name.encode(), IFF_TUN | IFF_NO_PI))
    for command in (
        ["ip", "link", "set", name, "netns", namespace],
        ["ip", "-n", namespace, "addr", "add", own, "peer", other, "dev", name],
        ["ip", "-n", namespace, "link", "set", name, "up"],
    ):
        subprocess.run(command, check=True)
    return tun


class Way:
    """One direction."""

    def __init__(self, to: int, loss: float, delay_s: float, rate: float, draw: random.Random):
        self.to, self.loss, self.delay_s, self.rate, self.draw = to, loss, delay_s, rate, draw
        self.waiting: list[tuple[float, int, bytes]] = []
        self.free_at = 0.0
        self.carried = self.lost = 0

    def take(self, packet: bytes, now: float):
        if self.draw.random() < self.loss or len(self.waiting) >= QUEUE_MAX:
            self.lost += 1
            return
        self.free_at = max(now, self.free_at) + len(packet) * 8 / self.rate
        self.carried += 1
        heapq.heappush(self.waiting, (self.free_at + self.delay_s, self.carried, packet))

    def give(self, now: float):
        while self.waiting and self.waiting[0][0] <= now:
            _, _, packet = heapq.heappop(self.waiting)
            try:
                os.write(self.to, packet)
            except OSError:
                self.lost += 1  # the device's own queue is full, or it is going down


def main(near: str, far: str, loss: str, delay_ms: str, rate: str, seed: str):
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    ends = [end_in(near, "10.77.0.1", "10.77.0.2"), end_in(far, "10.77.0.2", "10.77.0.1")]
    draw = random.Random(int(seed))
    ways = {
        from_: Way(to, float(loss) / 100, float(delay_ms) / 1000, float(rate), draw)
        for from_, to in zip(ends, reversed(ends))
    }
    print("the line stands: http://127.0.0.1:0", flush=True)
    try:
        while True:
            due = min((way.waiting[0][0] for way in ways.values() if way.waiting), default=None)
            rest = None if due is None else max(0.0, due - time.monotonic())
            for end in select.select(ends, [], [], rest)[0]:
                try:
                    while packet := os.read(end, PACKET_BYTES_MAX):
                        ways[end].take(packet, time.monotonic())
                except BlockingIOError:
                    pass
            for way in ways.values():
                way.give(time.monotonic())
    finally:
        for name, way in zip(("there", "back"), ways.values()):
            print(f"{name}: {way.carried} packets carried, {way.lost} lost", flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
