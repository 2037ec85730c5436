import CoilsideCore
import Foundation
import Testing

@testable import CoilsideKit

/// What the views are told to draw.
@Suite struct ScreenTests {
    private func dwell(_ state: DwellState, least: Int64 = 60_000, most: Int64 = 120_000) -> Block {
        .dwell(
            title: "t", state: state, stateText: "", leastAtUtcMs: least, mostAtUtcMs: most, leastClock: "", mostClock: "", leastMs: 60_000,
            then: "")
    }

    private func step(_ id: String, _ blocks: [Block]) -> Block {
        .step(id: id, title: "", why: "", state: .open, stateText: "", blocks: blocks)
    }

    @Test func the_digits_count_to_the_least_then_to_the_most_then_past_it() throws {
        let dwell = try #require(Dwell(dwell(.running)))
        let cases: [(Int64, String, String)] = [
            (0, "1:00", "shell-to-least"), (1, "1:00", "shell-to-least"), (59_001, "0:01", "shell-to-least"),
            (60_000, "1:00", "shell-to-most"), (120_000, "+0:00", "shell-past-most"), (3_780_000, "+1:01:00", "shell-past-most"),
        ]
        for (now, text, key) in cases { #expect(dwell.digits(nowUtcMs: now) == (text, key)) }
        #expect(dwell.share(nowUtcMs: 30_000) == 0.5 && dwell.share(nowUtcMs: -9) == 0 && dwell.share(nowUtcMs: 90_000) == 1)
    }

    @Test func a_screen_is_about_the_only_waiting_time_that_runs() {
        #expect(Waiting.alone([step("a", [dwell(.running)])]) != nil)
        #expect(Waiting.alone([step("a", [dwell(.running), dwell(.ready)])]) == nil)
        #expect(Waiting.alone([step("a", [dwell(.waiting)])]) == nil)
        #expect(Waiting.alone([step("a", [dwell(.running)]), step("b", [])]) == nil)
    }

    @Test func the_screen_is_read_again_at_the_next_limit() {
        let blocks = [step("a", [dwell(.running)]), dwell(.ended, least: 5, most: 6)]
        #expect(Waiting.nextLimit(blocks, nowUtcMs: 0) == 60_000)
        #expect(Waiting.nextLimit(blocks, nowUtcMs: 60_000) == 120_000)
        #expect(Waiting.nextLimit(blocks, nowUtcMs: 120_000) == nil)
    }

    @Test func digits_fill_the_screen_only_where_no_hand_is_asked_for() {
        let choice = Block.choice(field: "f", label: "", options: [], chosen: nil, problem: nil)
        #expect(Waiting.onlyWaits([step("a", [dwell(.running), .text(text: "", level: 0, tone: .plain)])]))
        #expect(!Waiting.onlyWaits([step("a", [dwell(.running), choice])]))
    }

    @Test func small_blocks_of_one_kind_that_follow_each_other_stand_together() {
        let check = Block.check(label: "", done: false, press: .seal)
        let text = Block.text(text: "", level: 0, tone: .plain)
        #expect(Arrangement.runs([check, check, text, text, check]).map(\.blocks.count) == [2, 1, 1, 1])
        #expect(Arrangement.runs([check, check, text]).map(\.id) == [0, 2])
    }

    @Test func bars_and_their_doubt_share_a_track_with_zero() {
        let bars = [Bar(label: "", value: 8, doubt: 2, text: ""), Bar(label: "", value: -2, doubt: 0, text: "")]
        let scale = ChartScale(bars)
        #expect(scale.at(-2) == 0 && scale.at(10) == 1)
        #expect(scale.length(bars[0]) == scale.at(0)...scale.at(8))
        #expect(scale.doubt(bars[0]) == scale.at(6)...1 && scale.doubt(bars[1]) == nil)
        #expect(ChartScale([]).at(0) == 0)
    }

    @Test func a_button_that_must_be_held_waits_for_a_second_and_a_half_or_for_a_second_press() {
        var hold = Hold()
        func held(for ms: Int64) -> [Bool] {
            hold.down(nowMs: 1000)
            hold.down(nowMs: 1000 + ms / 2)
            defer { hold.up() }
            return [hold.fires(nowMs: 1000 + ms), hold.fires(nowMs: 1000 + ms)]
        }
        let fired = [held(for: 1499), held(for: 1500)]
        #expect(fired == [[false, false], [true, false]])
        hold.down(nowMs: 4000)
        hold.up()
        let slid = hold.fires(nowMs: 9000)
        #expect(!slid && !hold.isHeld)
        let presses = [10_000, 15_999, 20_000, 26_000].map { hold.activate(nowMs: $0) }
        #expect(presses == [false, true, false, false], "the last one came too late for a second press")
        #expect(hold.isArmed(nowMs: 26_001) && !hold.isArmed(nowMs: 32_000))
    }

    @Test func what_is_drawn_by_hand_is_whole_numbers_in_the_cores_box() throws {
        var strokes = Strokes("", width: 1200, height: 480)
        #expect(strokes.isEmpty && strokes.text.isEmpty)
        strokes.begin()
        strokes.go(x: 0, y: 0, wide: 300, high: 120)
        strokes.go(x: 0.5, y: 0, wide: 300, high: 120)  // too near
        strokes.go(x: 400, y: 60, wide: 300, high: 120)  // outside: the edge
        #expect(strokes.text == #"{"height":480,"strokes":[[[0,0],[1200,240]]],"width":1200}"#)
        #expect(Strokes(strokes.text, width: 1200, height: 480) == strokes)
        #expect(strokes.lines(wide: 300, high: 120)[0].map(\.x) == [0, 300])
        #expect(Strokes("not drawn", width: 1, height: 1).isEmpty)
    }

    @Test func only_addresses_that_open_a_page_or_call_a_person_are_followed() {
        #expect(Address.of("summary.html") == .summary && Address.of("summary.pdf") == .hidden)
        #expect(Address.of("tel:5550107") == .outside(URL(string: "tel:5550107")!))
        #expect(Address.of("geo:1.5,2.5?q=1.5,2.5") == .outside(URL(string: "https://maps.apple.com/?q=1.5,2.5")!))
        for to in ["javascript:alert(1)", "file:///etc/passwd", "/inside", ""] { #expect(Address.of(to) == .words(to)) }
    }

    @Test func every_sign_is_drawn_to_its_end() throws {
        let file = Paths.root.appendingPathComponent("ios/Sources/CoilsideKit/Resources/drawings.json")
        let all = try JSONDecoder().decode([String: [String: String]].self, from: Data(contentsOf: file))
        let paths = all.values.flatMap(\.values)
        #expect(paths.count >= 37)
        for path in paths {
            let letters = path.filter { $0.isLetter }.count
            let strokes = LineDrawing(path).strokes
            #expect(strokes.count >= letters, "\(path) ends early")
            for stroke in strokes {
                let points =
                    switch stroke {
                    case .move(let to), .line(let to): [to]
                    case .curve(let a, let b, let to): [a, b, to]
                    case .close: [LineDrawing.Point]()
                    }
                for point in points { #expect((-1...25).contains(point.x) && (-1...25).contains(point.y), "\(path): \(point)") }
            }
        }
        #expect(LineDrawing.sign("nothing known") == .glyph("danger") && LineDrawing.sign("emergency-eye") == .sign("eye"))
    }

    @Test func an_arc_ends_where_it_should_and_goes_the_way_that_its_flags_say() throws {
        let strokes = LineDrawing("M12 4a8 8 0 1 1 0 16 8 8 0 0 1 0-16z").strokes
        let ends = strokes.compactMap { if case .curve(_, _, let to) = $0 { to } else { nil } }
        #expect(ends.count == 4 && abs(ends[0].x - 20) < 1e-9 && abs(ends[2].x - 4) < 1e-9, "\(ends)")
        #expect(ends.last == LineDrawing.Point(x: 12, y: 4))
    }

    @Test func two_clocks_that_went_on_alike_are_one_span_of_counting() {
        let kept = Boot.Kept(epoch: "e", startedMs: 1_000_000, monoMs: 5000)
        #expect(Boot.goesOn(kept, wallMs: 1_060_500, monoMs: 60_000))
        #expect(!Boot.goesOn(kept, wallMs: 1_004_000, monoMs: 4000), "the counting began anew")
        #expect(!Boot.goesOn(kept, wallMs: 4_660_000, monoMs: 60_000), "the wall clock was set, or the device was off")
    }

    @Test func the_devices_clock_counts_on_and_knows_its_span_again() throws {
        let file = URL(fileURLWithPath: NSTemporaryDirectory()).appendingPathComponent(UUID().uuidString)
        let (one, other) = (DeviceClock(kept: file).now(), DeviceClock(kept: file).now())
        #expect(one.monoEpoch == other.monoEpoch && other.monoMs >= one.monoMs && one.utcMs > 1_700_000_000_000)
        let first = Boot.recognised(in: file, wallMs: 1_000_000, monoMs: 1000)
        #expect(Boot.recognised(in: file, wallMs: 1_005_000, monoMs: 6000) == first)
        #expect(Boot.recognised(in: file, wallMs: 1_005_000, monoMs: 10) != first)
    }
}
