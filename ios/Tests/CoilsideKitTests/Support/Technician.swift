import CoilsideCore
import Foundation

@testable import CoilsideKit

/// The visit does not go on.
struct Stuck: Error, CustomStringConvertible {
    let description: String
}

/// Plays a visit through the Kit as a person would: looks at the screen from the top, and does the first thing that it offers.
@MainActor
final class Technician {
    /// One thing done.
    enum Move: Equatable {
        case press(Action), choose(String, String), type(String, String), photograph(String), wait(Int64), stopAlarm(String)
    }

    let device: Device
    private let answers: Answers
    private(set) var typed: [String: String] = [:]
    private(set) var photographs = 0
    private(set) var waits = 0
    private(set) var alarmsHeard = 0
    /// Takes pictures out of files in place of the camera, every second one.
    var choosesFiles = true
    /// How large a picture out of a file is, bytes.
    var pictureBytes = 40
    /// What was taken, to the byte.
    private(set) var taken: [Data] = []

    private static let movesMost = 600

    init(_ device: Device) throws {
        self.device = device
        answers = try Answers.read()
    }

    private var app: Companion { device.app }

    /// Begins the visit that is on the round.
    func begin() async throws {
        let all = Self.buttons(device.screen)
        guard let start = all.first(where: { if case .startVisit = $0.press { true } else { false } }) else {
            throw Stuck(description: "no visit on the round: \(device.screen)")
        }
        app.press(start.press)
        await device.settle()
    }

    /// Plays until it is as wanted. `after` is called behind every move, with its number.
    func play(until reached: @MainActor (Screen) -> Bool, after: @MainActor (Int, Move) async throws -> Void = { _, _ in }) async throws {
        var last: Move?
        var again = 0
        for number in 1... {
            if app.alarms.ringing == nil, reached(device.screen) { return }
            let move = try next()
            again = move == last ? again + 1 : 0
            last = move
            if again > 2 || number > Self.movesMost { throw Stuck(description: "over and over: \(move)\n\(device.screen)") }
            try await make(move)
            if let trouble = app.session.trouble { throw Stuck(description: "\(trouble) behind \(move)") }
            try await after(number, move)
        }
    }

    /// Plays until the record is sealed.
    func playToTheSeal(after: @MainActor (Int, Move) async throws -> Void = { _, _ in }) async throws {
        try await play(until: { Self.isSealed($0) }, after: after)
    }

    nonisolated static func isSealed(_ screen: Screen) -> Bool {
        screen.place == "leaving" && !buttons(screen).contains { $0.press == .seal || $0.press == .cancelSeal }
    }

    func make(_ move: Move) async throws {
        device.clock.pass(5000)
        switch move {
        case .press(let action): app.press(action)
        case .choose(let field, let option): app.press(.choose(field: field, option: option))
        case .type(let field, let text):
            app.fields.typed(field, String(text.prefix(1)))
            app.fields.typed(field, text)
            // Return and leaving the field at once, as quick fingers do: it must count once.
            app.fields.left(field, text, halfTyped: false)
            app.fields.left(field, text, halfTyped: false)
            typed[field] = text
        case .photograph:
            photographs += 1
            if choosesFiles, photographs % 2 == 0 {
                taken.append(Picture.of("file \(photographs)", bytes: pictureBytes))
                await app.photos.take(taken[taken.count - 1])
            } else {
                await app.photos.startCamera()
                await app.photos.shutter()
                if let last = device.camera.last { taken.append(last) }
            }
        case .wait(let until):
            waits += 1
            device.clock.pass(until - device.clock.now().utcMs + 1000)
            await app.alarms.look()
            // Its time is up now: the alarm must ring.
            guard app.alarms.ringing != nil else { throw Stuck(description: "no alarm rings behind a waiting time") }
        case .stopAlarm:
            alarmsHeard += 1
            app.alarms.stop()
        }
        await device.settle()
    }

    /// The first thing that the screen offers.
    func next() throws -> Move {
        let screen = device.screen
        if let alarm = app.alarms.ringing { return .stopAlarm(alarm.text) }
        if let wanted = app.photos.wanted { return .photograph(wanted.title) }
        // A plain one tells; it asks for nothing.
        for notice in screen.notices where notice.tone != .plain {
            guard let button = notice.buttons.first(where: { $0.tone != .quiet }) else {
                throw Stuck(description: "\(notice.title): \(notice.lines)")
            }
            return .press(button.press)
        }
        for block in screen.blocks {
            guard case .step(_, _, _, let state, _, let inside) = block, state == .open || state == .running else { continue }
            if let move = try self.inside(inside) { return move }
        }
        if let running = Waiting.all(screen.blocks).first(where: { $0.state == .running }) { return .wait(running.leastAtUtcMs) }
        guard let main = screen.foot.first else { throw Stuck(description: "nothing is offered: \(screen)") }
        return .press(main.press)
    }

    private func inside(_ blocks: [Block]) throws -> Move? {
        // What is measured during a wait is measured then.
        let later = Waiting.all(blocks).contains { $0.state == .waiting }
        for case .choice(let field, _, let options, nil, _) in blocks { return .choose(field, answers.option(field, options)) }
        for block in blocks {
            switch block {
            case .number(let field, _, _, let text, _, _, let problem, let question, let taken, _):
                if let question { return .press(question.confirm.press) }
                if let problem { throw Stuck(description: problem) }
                if taken == nil, !(later && text.isEmpty) { return .type(field, answers.text(field)) }
            case .textEntry(let field, _, let text, _, let problem, let question):
                if let question { return .press(question.confirm.press) }
                if let problem { throw Stuck(description: problem) }
                if text.isEmpty, !later { return .type(field, answers.text(field)) }
            default: continue
            }
        }
        for case .button(let button) in blocks where button.tone != .quiet { return .press(button.press) }
        for case .shot(_, _, _, _, let photos, _, let press, _) in blocks where photos.isEmpty && !later { return .press(press.press) }
        for case .check(_, false, let press) in blocks { return .press(press) }
        return nil
    }

    /// Every button of a screen but those of the menu.
    nonisolated static func buttons(_ screen: Screen) -> [CoilsideCore.Button] {
        func of(_ blocks: [Block]) -> [CoilsideCore.Button] {
            blocks.flatMap { block -> [CoilsideCore.Button] in
                switch block {
                case .button(let button): [button]
                case .step(_, _, _, _, _, let inside): of(inside)
                default: []
                }
            }
        }
        return of(screen.blocks) + screen.foot + screen.notices.flatMap(\.buttons)
    }
}
