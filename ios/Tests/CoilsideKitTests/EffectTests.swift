import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

/// Answers that come late, twice, at the wrong time, or not at all.
@MainActor @Suite struct EffectTests {
    /// At a photograph that is wanted, with its request.
    private func wanted(_ device: Device) async throws -> (Technician, Wanted) {
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { _ in device.app.photos.wanted != nil })
        return (technician, try #require(device.app.photos.wanted))
    }

    private func taken(_ device: Device) throws -> Int { try Record(#require(device.door)).of("photo-taken").count }

    @Test func an_answer_said_twice_counts_once() async throws {
        let device = try Device()
        let (technician, first) = try await wanted(device)
        await device.app.photos.take(Picture.of("one"))
        await device.settle()
        #expect(try taken(device) == 1)
        device.app.session.done(first.id, .photo(place: nil))
        device.app.session.done(first.id, .cancelled)
        await device.settle()
        #expect(try taken(device) == 1 && device.app.session.trouble == nil)
        try await technician.play(until: { _ in technician.photographs > 1 })
    }

    @Test func a_photograph_that_comes_behind_its_cancelling_is_kept() async throws {
        let device = try Device()
        let (_, first) = try await wanted(device)
        device.app.photos.cancel()
        await device.settle()
        let path = try #require(device.door).incomingPath(effectId: first.id)
        try Incoming.put(Picture.of("late"), at: path)
        device.app.session.done(first.id, .photo(place: nil))
        await device.settle()
        #expect(try taken(device) == 1, "it vanished")
        #expect(device.app.session.trouble == nil)
    }

    @Test func a_photograph_put_down_before_a_kill_is_taken_in_at_the_next_start() async throws {
        let device = try Device()
        let (_, first) = try await wanted(device)
        try Incoming.put(Picture.of("orphan"), at: #require(device.door).incomingPath(effectId: first.id))
        try await device.killAndStart()
        #expect(try taken(device) == 1 && device.app.photos.wanted == nil)
    }

    @Test func an_answer_that_the_core_throws_back_is_told_and_can_be_given_again() async throws {
        let device = try Device()
        var door: FaultyDoor?
        device.wrap = { core in
            let faulty = FaultyDoor(core)
            door = faulty
            return faulty
        }
        let (technician, first) = try await wanted(device)
        try #require(door).fails = .Failed(detail: "the disk is gone")
        await device.app.photos.take(Picture.of("again"))
        await device.settle()
        #expect(device.app.session.trouble == Trouble(key: nil, detail: "the disk is gone"))
        #expect(device.app.photos.wanted?.id != first.id, "the sheet stands in the way of what is told")
        try #require(door).fails = nil
        device.app.session.tryAgain()
        await device.settle()
        #expect(try taken(device) == 1 && device.app.session.trouble == nil)
        door = nil
        try await technician.play(until: { _ in technician.photographs > 1 })
    }

    @Test func an_answer_to_a_request_that_nobody_made_is_told_and_changes_nothing() async throws {
        let device = try Device()
        try await device.startWithVisit()
        device.app.session.done("nobody/1/0", .woken)
        await device.settle()
        #expect(device.app.session.trouble != nil)
        device.app.session.putAside()
        #expect(device.app.session.trouble == nil && !device.app.session.canTryAgain)
    }

    @Test func a_place_asked_for_again_before_it_is_found_is_looked_for_once() async throws {
        let device = try Device()
        let place = SlowPlace()
        device.place = place
        try await device.startWithVisit()
        let start = try #require(Technician.buttons(device.screen).first { if case .startVisit = $0.press { true } else { false } })
        device.app.press(start.press)
        while place.asked == 0 { try await Task.sleep(nanoseconds: 1_000_000) }
        await device.app.session.open()
        await device.settle()
        #expect(place.asked == 1)
        #expect(try Record(#require(device.door)).of("place-fixed").count == 1)
    }

    @Test func a_request_handed_out_again_is_not_begun_twice() async throws {
        let device = try Device()
        let (_, first) = try await wanted(device)
        await device.app.session.open()
        await device.app.session.open()
        await device.settle()
        device.app.photos.cancel()
        await device.settle()
        #expect(device.app.photos.wanted == nil, "\(first) waits a second time")
    }

    @Test func a_press_pressed_twice_counts_once() async throws {
        let device = try Device()
        var door: FaultyDoor?
        device.wrap = { core in
            let counting = FaultyDoor(core)
            door = counting
            return counting
        }
        try await device.startWithVisit()
        let start = try #require(Technician.buttons(device.screen).first { if case .startVisit = $0.press { true } else { false } })
        device.app.press(start.press)
        #expect(device.app.session.waits(start.press))
        device.app.press(start.press)
        await device.settle()
        #expect(door?.acts.filter { $0 == start.press }.count == 1)
        device.app.press(start.press)
        await device.settle()
        #expect(door?.acts.filter { $0 == start.press }.count == 2, "once answered it can be pressed again")
    }

    @Test func a_waiting_time_that_is_taken_back_calls_nobody() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { Waiting.alone($0.blocks)?.state == .running })
        let alarm = try #require(device.bell.set.min { $0.value < $1.value })
        #expect(device.bell.set.count % 3 == 0, "it calls again for whoever did not hear it")
        let step = try #require(device.screen.blocks.compactMap { if case .step(let id, _, _, _, _, _) = $0 { id } else { nil } }.first)
        device.app.press(.undo(step: step))
        await device.settle()
        #expect(device.bell.set.isEmpty, "\(alarm) still calls")
        device.clock.pass(3_600_000)
        await device.app.alarms.look()
        #expect(device.app.alarms.ringing == nil)
    }

    @Test func a_signature_that_cannot_be_made_is_asked_again_by_a_person() async throws {
        #expect(await EffectRunner.sign("AAAA", NoSigner()) == .failed(why: "NoKey()"))
        #expect(await EffectRunner.sign("***", NoSigner()) == .failed(why: "not base64"))
    }

    @Test func packs_of_the_folder_are_handed_in_when_they_are_asked_for() async throws {
        let device = try Device()
        let packs = device.folder.appendingPathComponent("packs")
        let bad = packs.appendingPathComponent("mine")
        try FileManager.default.createDirectory(at: bad, withIntermediateDirectories: true)
        try Data("this is no pack".utf8).write(to: bad.appendingPathComponent("pack.toml"))
        try Data("x".utf8).write(to: bad.appendingPathComponent("picture.png"))
        device.packs = packs
        #expect(PackShelf.all(in: packs).map { $0.files.map(\.name) } == [["pack.toml"]])
        try await device.startWithVisit()
        device.app.press(.go(to: "procedures"))
        device.app.press(.readPacks)
        await device.settle()
        #expect("\(device.screen)".contains("mine"), "nothing is told of the folder")
    }

    @Test func an_original_that_only_the_platform_decodes_gets_its_small_picture_from_there() async throws {
        let device = try Device()
        let original = Data([0, 0, 0, 24]) + Data("ftypheic".utf8) + Data(count: 400)
        let small = Picture.of("small")
        device.thumbnail = { Thumbnail(digest: LibCrypto.sha256($0), jpeg: small) }
        let (_, _) = try await wanted(device)
        await device.app.photos.take(original)
        await device.settle()
        #expect(try taken(device) == 1)
        let path = try #require(device.door).previewPath(digest: LibCrypto.sha256(original))
        for _ in 0..<500 where !FileManager.default.fileExists(atPath: path) { try await Task.sleep(nanoseconds: 1_000_000) }
        #expect(FileManager.default.contents(atPath: path) == small)
    }
}

private struct NoSigner: Signer {
    func publicKey() throws -> Data { throw NoKey() }
    func sign(_ bytes: Data) async throws -> Data { throw NoKey() }
}
