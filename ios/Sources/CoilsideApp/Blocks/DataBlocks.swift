import CoilsideCore
import CoilsideKit
import SwiftUI

/// A dilution to prepare.
struct MixBlock: View {
    let title: String
    let rows: [MixRow]
    let order: [String]
    let warning: String?

    var body: some View {
        VStack(alignment: .leading, spacing: 12) {
            Text(verbatim: title).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            ForEach(Array(rows.enumerated()), id: \.offset) { each in
                VStack(alignment: .leading, spacing: 2) {
                    Text(verbatim: each.element.label).font(.subheadline).foregroundStyle(Palette.soft)
                    Text(verbatim: each.element.amount).font(.title2.weight(.semibold)).foregroundStyle(Palette.ink)
                }
                .accessibilityElement(children: .combine)
            }
            ForEach(Array(order.enumerated()), id: \.offset) { each in
                HStack(alignment: .firstTextBaseline, spacing: 10) {
                    Text(verbatim: "\(each.offset + 1)").font(.headline.monospacedDigit()).foregroundStyle(Palette.lead)
                    Text(verbatim: each.element).foregroundStyle(Palette.ink)
                }
                .accessibilityElement(children: .combine)
            }
            if let warning { Marked(glyph: "danger", text: warning, ink: Palette.danger) }
        }
        .paper(Palette.leadWash, edge: Palette.lead)
    }
}

/// Rows and columns. The first column names the row; a screen reader hears each cell with its column.
struct TableBlock: View {
    let caption: String
    let columns: [String]
    let rows: [[String]]

    var body: some View {
        VStack(alignment: .leading, spacing: 8) {
            Text(verbatim: caption).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            ScrollView(.horizontal) {
                Grid(alignment: .leading, horizontalSpacing: 18, verticalSpacing: 10) {
                    GridRow {
                        ForEach(Array(columns.enumerated()), id: \.offset) { each in Text(verbatim: each.element).font(.subheadline.weight(.semibold))
                        }
                    }
                    .foregroundStyle(Palette.soft)
                    .accessibilityHidden(true)
                    Divider()
                    ForEach(Array(rows.enumerated()), id: \.offset) { row in
                        GridRow {
                            ForEach(Array(row.element.enumerated()), id: \.offset) { cell in
                                Text(verbatim: cell.element)
                                    .font(cell.offset == 0 ? .body.weight(.medium) : .body.monospacedDigit())
                                    .foregroundStyle(Palette.ink)
                                    .accessibilityLabel(said(row.element, cell.offset))
                            }
                        }
                    }
                }
            }
        }
        .paper()
    }

    private func said(_ row: [String], _ at: Int) -> String {
        at > 0 && at < columns.count ? "\(row[0]), \(columns[at]): \(row[at])" : row[at]
    }
}

/// Bars with their doubt. The words beside each bar say the same.
struct ChartBlock: View {
    let caption: String
    let unit: String
    let bars: [CoilsideCore.Bar]

    var body: some View {
        let scale = ChartScale(bars)
        VStack(alignment: .leading, spacing: 12) {
            Text(verbatim: unit.isEmpty ? caption : "\(caption) (\(unit))").font(.headline).foregroundStyle(Palette.ink)
                .accessibilityAddTraits(.isHeader)
            ForEach(Array(bars.enumerated()), id: \.offset) { each in
                VStack(alignment: .leading, spacing: 4) {
                    Text(verbatim: each.element.label).font(.subheadline).foregroundStyle(Palette.soft)
                    GeometryReader { box in bar(each.element, scale, box.size, Palette.bars[each.offset % Palette.bars.count]) }
                        .frame(height: 30)
                        .accessibilityHidden(true)
                    Text(verbatim: each.element.text).font(.body.monospacedDigit()).foregroundStyle(Palette.ink)
                }
                .accessibilityElement(children: .combine)
            }
        }
        .paper()
    }

    private func bar(_ bar: CoilsideCore.Bar, _ scale: ChartScale, _ size: CGSize, _ ink: Color) -> some View {
        let length = scale.length(bar)
        return ZStack(alignment: .topLeading) {
            span(length, size, high: 30).fill(ink)
            if let doubt = scale.doubt(bar) {
                span(doubt, size, high: 6).fill(Palette.ink).opacity(0.75)
            }
        }
    }

    private func span(_ range: ClosedRange<Double>, _ size: CGSize, high: CGFloat) -> Span {
        Span(from: range.lowerBound, to: range.upperBound, high: high)
    }
}

/// A part of a track, in the middle of its height.
private struct Span: Shape {
    let from: Double
    let to: Double
    let high: CGFloat

    func path(in rect: CGRect) -> Path {
        Path(CGRect(x: rect.minX + from * rect.width, y: rect.midY - high / 2, width: max(1, (to - from) * rect.width), height: high))
    }
}
