import CoilsideCore

/// Where bars and their doubt lie on a common track, 0…1.
public struct ChartScale: Sendable, Equatable {
    private let low: Double, span: Double

    /// A track that holds every bar with its doubt, and zero.
    public init(_ bars: [Bar]) {
        let ends = bars.flatMap { [$0.value - $0.doubt, $0.value + $0.doubt] }
        low = min(0, ends.min() ?? 0)
        let wide = max(0, ends.max() ?? 0) - low
        span = wide > 0 ? wide : 1
    }

    /// Where a value lies.
    public func at(_ value: Double) -> Double { (value - low) / span }

    /// From where to where a bar is drawn.
    public func length(_ bar: Bar) -> ClosedRange<Double> { at(min(0, bar.value))...at(max(0, bar.value)) }

    /// From where to where its doubt is drawn; none where it has none.
    public func doubt(_ bar: Bar) -> ClosedRange<Double>? {
        bar.doubt > 0 ? at(bar.value - bar.doubt)...at(bar.value + bar.doubt) : nil
    }
}
