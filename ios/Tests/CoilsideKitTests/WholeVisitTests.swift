import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

@MainActor @Suite struct WholeVisitTests {
    /// What every sealed record of the scripted visit must be.
    private func holds(_ technician: Technician) throws {
        let device = technician.device
        let door = try #require(device.door)
        let record = try Record(door)
        let wanted = try String(contentsOf: Paths.kinds, encoding: .utf8).split(separator: "\n").map(String.init)
        #expect(record.kinds == wanted, "another order of things than in the other shells")
        let readings = record.of("reading-taken").compactMap { event in
            (event["reading"] as? String).flatMap { reading in (event["typed"] as? String).map { ("read:" + reading, $0) } }
        }
        #expect(Dictionary(readings, uniquingKeysWith: { one, _ in one + " twice" }) == technician.typed.filter { $0.key.hasPrefix("read:") })
        #expect(record.of("photo-taken").count == technician.photographs)
        #expect(technician.photographs >= 10)
        #expect(technician.waits > 4)
        // Killed while it rang, it has rung: whoever opens the app again is there.
        #expect(device.opened > 1 ? technician.alarmsHeard > 0 : technician.alarmsHeard == technician.waits)
        #expect(record.of("step-started").count == technician.waits)
        let file = device.folder.appendingPathComponent("record.zip")
        try door.writeRecord(visit: record.visit, personal: false, path: file.path)
        let verified = try coilside(["verify", file.path])
        #expect(verified.code == 0, "\(verified.text)")
        #expect(device.bell.set.isEmpty, "an alarm is left behind")
    }

    @Test func a_whole_visit_comes_to_the_same_sealed_record_as_in_every_shell() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.playToTheSeal()
        try holds(technician)
    }

    @Test func killed_and_restored_at_every_third_move_it_is_the_same_record() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.playToTheSeal { number, _ in
            guard number % 3 == 0 else { return }
            let before = device.screen
            let asked = device.app.photos.wanted
            try await device.killAndStart()
            #expect(device.screen.place == before.place)
            #expect(device.screen.title == before.title)
            #expect(device.app.photos.wanted == asked, "what was asked for is asked for again")
        }
        #expect(device.opened > 20)
        try holds(technician)
    }

    @Test func an_app_that_is_open_reads_the_screen_again_when_a_waiting_time_passes_its_limit_and_rings() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { Waiting.alone($0.blocks)?.state == .running })
        let dwell = try #require(Waiting.alone(device.screen.blocks))
        let watching = Task { await device.app.watch() }
        try await Task.sleep(nanoseconds: 700_000_000)
        device.clock.pass(dwell.leastAtUtcMs - device.clock.now().utcMs + 1)
        for _ in 0..<40 where device.app.alarms.ringing == nil || Waiting.alone(device.screen.blocks)?.state == .running {
            try await Task.sleep(nanoseconds: 50_000_000)
        }
        watching.cancel()
        #expect(device.app.alarms.ringing != nil && Waiting.alone(device.screen.blocks)?.state == .ready)
        #expect(Words.kept(in: device.app.home.words)?("shell-close") == "Close")
    }

    @Test func the_owners_summary_is_a_page_of_its_own_that_can_be_shared() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        await #expect(throws: DoorFault.self) { try await device.app.summary() }
        try await technician.playToTheSeal()
        let links = device.screen.blocks.compactMap { block -> Address? in if case .link(_, let to) = block { .of(to) } else { nil } }
        #expect(links.contains(.summary))
        let file = try await device.app.summary()
        let page = try String(contentsOf: file, encoding: .utf8)
        #expect(file.lastPathComponent == "summary.html")
        #expect(page.contains("Mill House") && page.hasPrefix("<!DOCTYPE html>"))
        device.app.sweepHandover()
        #expect(!FileManager.default.fileExists(atPath: file.path))
    }
}
