import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

/// Against the real office, as a process of its own.
@MainActor @Suite struct SendingTests {
    private func joinable(speed: Double) throws -> (Device, Office, CuttingWire) {
        let device = try Device(speed: speed)
        device.transport = { URLSessionTransport(slices: $0.slices, background: nil, name: "coilside-kit-tests") }
        let office = try Office(in: device.folder)
        return (device, office, try CuttingWire(to: office.port, seed: 20_260_504))
    }

    /// The device is in where its screen names the office.
    private func isIn(_ device: Device, _ wire: CuttingWire) async throws {
        try await device.wait(seconds: 20) { screen in
            screen.blocks.contains { if case .text(let text, _, .quiet) = $0 { text.contains("127.0.0.1:\(wire.port)") } else { false } }
        }
    }

    private func joinByHand(_ device: Device, _ office: Office, _ wire: CuttingWire) async throws {
        device.app.press(.go(to: Companion.joinPlace))
        let code = try await office.newCode()
        for (field, text) in [("join-code", code.lowercased()), ("join-office", "http://127.0.0.1:\(wire.port)/"), ("join-name", "Van 2")] {
            device.app.fields.typed(field, text)
            device.app.fields.left(field, text, halfTyped: false)
        }
        device.app.press(.join)
        try await isIn(device, wire)
    }

    @Test func a_device_joins_by_a_typed_code() async throws {
        let (device, office, wire) = try joinable(speed: 1)
        defer { wire.close() }
        try await device.start()
        try await joinByHand(device, office, wire)
        #expect(try office.rows("SELECT name FROM device") == [["Van 2"]])
    }

    @Test func a_device_joins_by_a_scanned_code_once_the_person_agrees() async throws {
        let (device, office, wire) = try joinable(speed: 1)
        defer { wire.close() }
        try await device.start()
        device.app.press(.go(to: Companion.joinPlace))
        await device.settle()
        let before = device.screen
        for foreign in ["https://elsewhere.example/", "LW-0001", "", "http://x/join", "javascript:/join#7K2M-9QXR"] {
            #expect(!device.app.scanned(foreign, deviceName: "Van 2"), "\(foreign)")
        }
        await device.settle()
        #expect(device.screen == before)
        let code = try await office.newCode()
        #expect(device.app.scanned(" http://127.0.0.1:\(wire.port)/join#\(code)\n", deviceName: "Van 2"))
        await device.settle()
        #expect(device.screen.blocks != before.blocks, "the fields are empty")
        try await Task.sleep(nanoseconds: 400_000_000)
        #expect(try office.rows("SELECT name FROM device").isEmpty, "it joined before anybody agreed")
        device.app.press(.join)
        try await isIn(device, wire)
    }

    @Test func over_a_wire_that_is_cut_with_kills_on_both_sides_nothing_is_lost_and_nothing_is_there_twice() async throws {
        let (device, office, wire) = try joinable(speed: 10)
        defer { wire.close() }
        try await device.startWithVisit()
        try await joinByHand(device, office, wire)
        device.app.press(.go(to: "round"))
        await device.settle()
        let technician = try Technician(device)
        technician.pictureBytes = 250_000
        try await technician.begin()
        wire.cut(behind: 200_000)
        try await technician.playToTheSeal { number, _ in
            if number % 40 == 0 { try await device.killAndStart() }
            if number % 60 == 30 { office.kill9() }
            if number % 60 == 45 { try office.start() }
        }
        office.kill9()
        try office.start()
        let record = try Record(#require(device.door))
        try await device.wait(seconds: 240) { $0.outbox.tone == .good }
        #expect(wire.cuts > 10, "only \(wire.cuts) of \(wire.connections) connections were cut")

        let sent = try office.rows("SELECT hex(bytes) FROM event WHERE visit = '\(record.visit)' ORDER BY seq").map { $0[0] }
        let own = try #require(device.door).events(visit: record.visit)
        #expect(sent == own.map { $0.utf8.map { String(format: "%02X", $0) }.joined() })
        #expect(try office.rows("SELECT count(*) FROM seal") == [["1"]])
        #expect(try office.rows("SELECT * FROM branch").isEmpty)
        let digests = record.of("photo-taken").compactMap { $0["digest"] as? String }
        #expect(digests.count == technician.photographs && Set(digests) == Set(technician.taken.map(LibCrypto.sha256)))
        for bytes in technician.taken { #expect(office.photo(LibCrypto.sha256(bytes)) == bytes) }
        for place in ["parts", "aside"] {
            #expect(try FileManager.default.contentsOfDirectory(atPath: office.folder.appendingPathComponent(place).path) == [])
        }
        #expect(try FileManager.default.contentsOfDirectory(atPath: device.app.home.slices.path) == [], "slices are left behind")
    }

    @Test func an_answer_that_sends_the_device_elsewhere_is_not_followed() async throws {
        let (device, office, wire) = try joinable(speed: 1)
        defer { wire.close() }
        let link = try coilside(["office", "--folder", office.folder.path, "--new-link"]).text.trimmingCharacters(in: .whitespacesAndNewlines)
        let transport = URLSessionTransport(slices: device.folder, background: nil, name: "t")
        defer { transport.end() }
        let (answers, said) = AsyncStream.makeStream(of: Answer.self)
        transport.listen { said.yield($0) }
        transport.carry(
            Sending(id: "a", method: "GET", origin: "http://127.0.0.1:\(office.port)", path: link, headers: [], body: Data(), file: nil))
        var answer = answers.makeAsyncIterator()
        #expect(await answer.next()?.status == 303)
    }

    @Test func answers_that_come_before_anybody_listens_are_kept() async throws {
        let transport = URLSessionTransport(slices: URL(fileURLWithPath: NSTemporaryDirectory()), background: nil, name: "t")
        defer { transport.end() }
        transport.carry(Sending(id: "a", method: "GET", origin: nil, path: "/x", headers: [], body: Data(), file: nil))
        let (answers, said) = AsyncStream.makeStream(of: Answer.self)
        transport.listen { said.yield($0) }
        var answer = answers.makeAsyncIterator()
        #expect(await answer.next()?.id == "a")
    }

    @Test func a_slice_is_copied_to_the_byte_and_a_file_that_became_shorter_is_never_sent_half() throws {
        let folder = URL(fileURLWithPath: NSTemporaryDirectory()).appendingPathComponent(UUID().uuidString)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let file = folder.appendingPathComponent("photo")
        let bytes = Picture.of("sliced", bytes: 3 << 20)
        try bytes.write(to: file)
        let slices = SliceFolder(folder)
        let slice = FileSlice(path: file.path, from: 1 << 20, length: (1 << 20) + 7)
        let out = try slices.copy(slice, of: "photo/7/../2")
        #expect(out.deletingLastPathComponent().path == folder.path, "it left its folder")
        #expect(FileManager.default.contents(atPath: out.path) == bytes[(1 << 20)..<((2 << 20) + 7)])
        #expect(throws: (any Error).self) { try slices.copy(FileSlice(path: file.path, from: 0, length: 4 << 20), of: "long") }
        slices.sweep(except: ["photo/7/../2"])
        #expect(FileManager.default.fileExists(atPath: out.path))
        slices.forget("photo/7/../2")
        #expect(!FileManager.default.fileExists(atPath: out.path))
    }

    @Test func a_request_without_an_office_and_an_office_that_is_gone_are_both_no_answer_with_the_reason() async throws {
        let folder = URL(fileURLWithPath: NSTemporaryDirectory())
        let transport = URLSessionTransport(slices: folder, background: nil, name: "t")
        defer { transport.end() }
        let (answers, said) = AsyncStream.makeStream(of: Answer.self)
        transport.listen { said.yield($0) }
        let gone = FileSlice(path: "/nowhere", from: 0, length: 1)
        for (id, origin, file) in [("a", nil, nil), ("b", "http://127.0.0.1:9", nil), ("c", "http://127.0.0.1:9", gone)] {
            transport.carry(Sending(id: id, method: "GET", origin: origin, path: "/x", headers: [], body: Data(), file: file))
        }
        var heard: [String: Answer] = [:]
        for await answer in answers {
            heard[answer.id] = answer
            if heard.count == 3 { break }
        }
        #expect(heard.values.allSatisfy { $0.status == 0 && !$0.body.isEmpty }, "\(heard)")
    }
}
