import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

@MainActor @Suite struct FieldTests {
    private final class Heard { var actions: [Action] = [] }

    private func fields() -> (Fields, Heard) {
        let (fields, heard) = (Fields(), Heard())
        fields.send = { heard.actions.append($0) }
        return (fields, heard)
    }

    @Test func typing_is_told_once_it_rests() async throws {
        let (fields, heard) = fields()
        for text in ["1", "12", "12.5"] { fields.typed("f", text) }
        #expect(heard.actions.isEmpty && fields.text("f", known: "") == "12.5")
        try await Task.sleep(nanoseconds: (Fields.restMs + 200) * 1_000_000)
        #expect(heard.actions == [.draft(field: "f", text: "12.5")])
    }

    @Test func a_field_that_was_only_passed_through_is_not_told_again() {
        let (fields, heard) = fields()
        fields.left("f", "12", halfTyped: false)
        #expect(heard.actions.isEmpty)
        // Half typed since before a restart: leaving it means it, once.
        fields.left("f", "12", halfTyped: true)
        fields.left("f", "12", halfTyped: true)
        #expect(heard.actions == [.enter(field: "f", text: "12")])
    }

    @Test func an_alarm_that_steps_in_front_of_somebody_who_types_is_no_sign_that_the_number_is_whole() {
        let (fields, heard) = fields()
        fields.typed("f", "1")
        fields.interrupted = { true }
        fields.left("f", "1", halfTyped: false)
        #expect(heard.actions.isEmpty)
        fields.interrupted = { false }
        fields.left("f", "12", halfTyped: false)
        #expect(heard.actions == [.enter(field: "f", text: "12")])
    }

    @Test func what_is_typed_stays_until_the_core_has_it() {
        let (fields, _) = fields()
        fields.typed("f", "12")
        fields.left("f", "12", halfTyped: false)
        #expect(fields.text("f", known: "old") == "12")
        fields.acknowledged(.enter(field: "f", text: "1"))
        #expect(fields.text("f", known: "old") == "12", "an older text was acknowledged")
        fields.acknowledged(.enter(field: "f", text: "12"))
        #expect(fields.text("f", known: "from the core") == "from the core")
    }

    @Test func half_typed_text_survives_a_kill() async throws {
        let device = try Device()
        try await device.startWithVisit()
        let technician = try Technician(device)
        try await technician.begin()
        try await technician.play(until: { Self.number($0) != nil })
        let field = try #require(Self.number(device.screen)).field
        device.app.fields.typed(field, "12,")
        await device.app.leave()
        try await device.killAndStart()
        let number = try #require(Self.number(device.screen))
        #expect(number.field == field && number.text == "12,")
    }

    @Test func what_is_typed_while_a_call_is_under_way_is_told_once_with_its_last_text() async throws {
        let device = try Device()
        try await device.startWithVisit()
        try await Technician(device).begin()
        for text in ["a", "ab", "abc"] { device.app.session.act(.draft(field: "finding", text: text)) }
        await device.settle()
        device.app.press(.go(to: "findings"))
        await device.settle()
        let texts = device.screen.blocks.compactMap { if case .textEntry("finding", _, let text, _, _, _) = $0 { text } else { nil } }
        #expect(texts == ["abc"])
    }

    private static func number(_ screen: Screen) -> (field: String, text: String)? {
        for case .step(_, _, _, _, _, let inside) in screen.blocks {
            for case .number(let field, _, _, let text, _, _, _, _, nil, _) in inside { return (field, text) }
        }
        return nil
    }
}
