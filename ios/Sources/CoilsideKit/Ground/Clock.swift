import CoilsideCore
import Foundation

/// Where the time comes from that goes into the core with every call.
public protocol Clock: Sendable {
    /// This moment, by the wall and by a clock that only counts.
    func now() -> Now
}

/// The clocks of this device. The counting one goes on while the app is killed and while the device sleeps.
public final class DeviceClock: Clock {
    private let epoch: String

    /// `kept` is a file in which the boot is recognised where the system has no name for it.
    public init(kept: URL) {
        epoch = Boot.name() ?? Boot.recognised(in: kept, wallMs: Self.wallMs(), monoMs: Self.monoMs())
    }

    public func now() -> Now {
        let zone = TimeZone.current.secondsFromGMT() / 60
        return Now(utcMs: Self.wallMs(), offsetMin: Int32(zone), monoMs: Self.monoMs(), monoEpoch: epoch)
    }

    private static func wallMs() -> Int64 { Int64((Date().timeIntervalSince1970 * 1000).rounded(.down)) }

    private static func monoMs() -> Int64 {
        #if os(Linux)
            let counting = CLOCK_BOOTTIME
        #else
            // Goes on while the device sleeps.
            let counting = CLOCK_MONOTONIC_RAW
        #endif
        var time = timespec()
        clock_gettime(counting, &time)
        return Int64(time.tv_sec) * 1000 + Int64(time.tv_nsec) / 1_000_000
    }
}

/// The span in which the counting clock may be compared: from one start of the device to the next.
public enum Boot {
    /// How far wall time and counted time may drift apart within one boot and still be taken for the same, milliseconds.
    public static let driftMaxMs: Int64 = 2000

    /// What was kept of the last look at the clocks.
    public struct Kept: Codable, Equatable, Sendable {
        /// The span's name.
        public var epoch: String
        /// Wall time less counted time, milliseconds: when the device was started, as its wall clock had it.
        public var startedMs: Int64
        /// Counted time, milliseconds.
        public var monoMs: Int64

        /// Puts them together.
        public init(epoch: String, startedMs: Int64, monoMs: Int64) {
            self.epoch = epoch
            self.startedMs = startedMs
            self.monoMs = monoMs
        }
    }

    /// The system's own name of this boot, where it tells one.
    static func name() -> String? {
        #if os(Linux)
            let id = try? String(contentsOfFile: "/proc/sys/kernel/random/boot_id", encoding: .utf8)
            return id.map { "boot-" + $0.trimmingCharacters(in: .whitespacesAndNewlines) }
        #else
            var length = 0
            guard sysctlbyname("kern.bootsessionuuid", nil, &length, nil, 0) == 0, length > 1 else { return nil }
            var bytes = [CChar](repeating: 0, count: length)
            guard sysctlbyname("kern.bootsessionuuid", &bytes, &length, nil, 0) == 0 else { return nil }
            return "boot-" + String(decoding: bytes.prefix { $0 != 0 }.map(UInt8.init(bitPattern:)), as: UTF8.self)
        #endif
    }

    /// The same span goes on where both clocks went on alike since `kept`; otherwise a new one begins, in which nothing of the
    /// one before is proven. A wall clock that was set counts as a new span too: that is the safe side.
    public static func goesOn(_ kept: Kept, wallMs: Int64, monoMs: Int64) -> Bool {
        monoMs >= kept.monoMs && abs((wallMs - monoMs) - kept.startedMs) <= driftMaxMs
    }

    static func recognised(in file: URL, wallMs: Int64, monoMs: Int64) -> String {
        let kept = (try? Data(contentsOf: file)).flatMap { try? JSONDecoder().decode(Kept.self, from: $0) }
        let same = kept.map { goesOn($0, wallMs: wallMs, monoMs: monoMs) } ?? false
        let epoch = same ? kept?.epoch ?? "" : "boot-" + UUID().uuidString.lowercased()
        let now = Kept(epoch: epoch, startedMs: wallMs - monoMs, monoMs: monoMs)
        // Where it cannot be kept the next start begins a new span.
        if let bytes = try? JSONEncoder().encode(now) { try? bytes.write(to: file, options: .atomic) }
        return epoch
    }
}
