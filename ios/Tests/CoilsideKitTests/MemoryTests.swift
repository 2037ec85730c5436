import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

@MainActor @Suite struct MemoryTests {
    /// What the process holds in memory, bytes (proc(5), statm).
    private func resident() throws -> Int {
        let pages = try String(contentsOfFile: "/proc/self/statm", encoding: .utf8).split(separator: " ")
        return (Int(pages[1]) ?? 0) * sysconf(Int32(_SC_PAGESIZE))
    }

    @Test func a_thousand_open_and_close_cycles_are_flat_in_memory() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { Waiting.alone($0.blocks)?.state == .running })
        func cycles(_ count: Int) async throws {
            for _ in 0..<count { try await device.killAndStart() }
        }
        // Caches and arenas fill first.
        try await cycles(200)
        let before = try resident()
        try await cycles(800)
        let grown = try resident() - before
        #expect(device.opened == 1001)
        #expect(grown < 12 << 20, "\(grown >> 10) KiB more after 800 cycles")
        #expect(Waiting.alone(device.screen.blocks)?.state == .running, "the waiting time does not run on")
    }
}
