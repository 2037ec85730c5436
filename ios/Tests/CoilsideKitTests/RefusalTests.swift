import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

/// What a person or a device turns down: each a state with words, none the end of the visit.
@MainActor @Suite struct RefusalTests {
    private func untilAPhotographIsWanted(_ device: Device) async throws -> Technician {
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { _ in device.app.photos.wanted != nil })
        return technician
    }

    private func goesOn(_ technician: Technician) async throws {
        let before = technician.photographs
        try await technician.play(until: { _ in technician.photographs > before + 1 })
    }

    @Test func a_photograph_turned_down_is_asked_again_by_its_button_and_by_nothing_else() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try await untilAPhotographIsWanted(device)
        await device.app.photos.startCamera()
        #expect(device.camera.runs)
        device.app.photos.cancel()
        await device.settle()
        #expect(device.app.photos.wanted == nil && !device.camera.runs)
        try await device.killAndStart()
        #expect(device.app.photos.wanted == nil, "it comes back by itself")
        try await goesOn(technician)
    }

    @Test func a_camera_that_is_denied_leaves_the_way_over_a_file() async throws {
        let device = try Device()
        device.camera.problem = .denied
        try await device.startWithVisit()
        let technician = try await untilAPhotographIsWanted(device)
        let photos = device.app.photos
        await photos.startCamera()
        #expect(photos.problem?.key == "shell-camera-refused" && photos.stage == .choose)
        await photos.take(Picture.of("a file"))
        await device.settle()
        #expect(photos.wanted == nil && photos.problem == nil)
        #expect(try Record(#require(device.door)).of("photo-taken").count == 1)
        device.camera.problem = nil
        try await goesOn(technician)
    }

    @Test func a_camera_that_breaks_off_keeps_the_photograph_wanted() async throws {
        let device = try Device()
        device.camera.breaks = CameraProblem.none
        try await device.startWithVisit()
        _ = try await untilAPhotographIsWanted(device)
        let photos = device.app.photos
        await photos.startCamera()
        await photos.shutter()
        #expect(photos.wanted != nil && photos.stage == .choose && photos.problem?.key == "shell-camera-none")
        #expect(!device.camera.runs)
    }

    @Test func a_photograph_larger_than_the_core_takes_is_refused_before_anything_is_written() async throws {
        let device = try Device()
        try await device.startWithVisit()
        _ = try await untilAPhotographIsWanted(device)
        let photos = device.app.photos
        await photos.take(Data(count: Incoming.bytesMost + 1))
        #expect(photos.problem?.key == "shell-problem-too-large" && photos.wanted != nil)
        await photos.take(Picture.of("smaller"))
        await device.settle()
        #expect(photos.wanted == nil)
    }

    @Test func without_a_fix_the_record_says_why() async throws {
        for (problem, key) in [(PlaceProblem.denied, "shell-place-refused"), (.late, "shell-place-late"), (.none, "shell-place-none")] {
            let device = try Device()
            device.place = TestPlace(problem: problem)
            try await device.startWithVisit()
            try await Technician(device).begin()
            let record = try Record(#require(device.door))
            #expect(record.of("place-missing").first?["why"] as? String == device.app.session.words(key))
            #expect(record.of("place-fixed").isEmpty)
        }
    }

    @Test func with_alarms_denied_it_says_so_and_rings_while_the_app_is_open() async throws {
        let device = try Device()
        device.bell.allowed = .denied
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { Waiting.alone($0.blocks)?.state == .running })
        #expect(device.app.alarms.line == .denied)
        try await technician.make(technician.next())
        #expect(device.app.alarms.ringing != nil)
    }

    @Test func on_a_full_disk_nothing_is_half_done_and_the_same_press_goes_through_when_there_is_room() async throws {
        let disk = try SmallDisk(bytes: 6 << 20)
        let device = try Device(folder: disk.folder)
        try await device.startWithVisit()
        let start = try #require(Technician.buttons(device.screen).first { if case .startVisit = $0.press { true } else { false } })
        try disk.fill()
        device.app.press(start.press)
        await device.settle()
        #expect(device.app.session.trouble?.key == "shell-phone-full" && device.app.session.canTryAgain)
        #expect(try Record.count(#require(device.door)) == 0, "half a visit was begun")
        try disk.makeRoom()
        device.app.session.tryAgain()
        await device.settle()
        #expect(device.app.session.trouble == nil && device.screen.unit == "A")
    }

    @Test func a_photograph_that_finds_no_room_stays_wanted_and_leaves_nothing_half() async throws {
        let disk = try SmallDisk(bytes: 6 << 20)
        let device = try Device(folder: disk.folder)
        try await device.startWithVisit()
        _ = try await untilAPhotographIsWanted(device)
        try disk.fill()
        let photos = device.app.photos
        await photos.take(Picture.of("large", bytes: 1 << 20))
        await device.settle()
        #expect(photos.problem?.key == "shell-phone-full" && photos.wanted != nil && photos.stage == .choose)
        let incoming = URL(fileURLWithPath: try #require(device.door).incomingPath(effectId: "v/1/0")).deletingLastPathComponent()
        #expect(try FileManager.default.contentsOfDirectory(atPath: incoming.path) == [])
        try disk.makeRoom()
        await photos.take(Picture.of("large", bytes: 1 << 20))
        await device.settle()
        #expect(photos.wanted == nil)
        #expect(try Record(#require(device.door)).of("photo-taken").count == 1)
    }
}
