// Stand-in for Apple's SwiftUI, for Linux only: the signatures that the app uses, so that its views type-check where no SwiftUI exists. Nothing
// draws. Signatures follow the SDK of iOS 18: argument labels, their being optional, attributes (@ViewBuilder, @MainActor, @escaping) are as
// Apple has them, and there is no overload and no default that Apple has not: a gap here only fails the check, an extra here would let
// through what Xcode refuses.
@_exported import Foundation
@_exported import Observation
import UIKit

// MARK: Core
@MainActor @preconcurrency public protocol View {
    associatedtype Body: View
    @ViewBuilder @MainActor @preconcurrency var body: Body { get }
}
extension Never: View { public var body: Never { fatalError() } }
public protocol _Leaf: View where Body == Never {}
extension _Leaf { public var body: Never { fatalError() } }

@resultBuilder public enum ViewBuilder {
    public static func buildExpression<C: View>(_ c: C) -> C { c }
    public static func buildBlock() -> EmptyView { EmptyView() }
    public static func buildBlock<C: View>(_ c: C) -> C { c }
    public static func buildBlock<each C: View>(_ c: repeat each C) -> TupleView<(repeat each C)> { .init((repeat each c)) }
    public static func buildIf<C: View>(_ c: C?) -> C? { c }
    public static func buildEither<T: View, F: View>(first: T) -> _ConditionalContent<T, F> { .init() }
    public static func buildEither<T: View, F: View>(second: F) -> _ConditionalContent<T, F> { .init() }
    public static func buildLimitedAvailability<C: View>(_ c: C) -> AnyView { AnyView(c) }
}
public struct EmptyView: _Leaf { nonisolated public init() {} }
public struct TupleView<T>: _Leaf { nonisolated public init(_ v: T) {} }
public struct _ConditionalContent<T, F>: _Leaf { nonisolated init() {} }
public struct AnyView: _Leaf { nonisolated public init<V: View>(_ v: V) {} }
extension Optional: View where Wrapped: View { public var body: Never { fatalError() } }

// MARK: State
@propertyWrapper public struct State<Value> {
    public init(wrappedValue: Value) { fatalError() }
    public init(initialValue: Value) { fatalError() }
    public var wrappedValue: Value { get { fatalError() } nonmutating set {} }
    public var projectedValue: Binding<Value> { fatalError() }
}
extension State where Value: ExpressibleByNilLiteral { public init() { fatalError() } }
@propertyWrapper @dynamicMemberLookup public struct Binding<Value> {
    @preconcurrency public init(get: @escaping @isolated(any) @Sendable () -> Value, set: @escaping @isolated(any) @Sendable (Value) -> Void) {}
    public var wrappedValue: Value { get { fatalError() } nonmutating set {} }
    public var projectedValue: Binding<Value> { self }
    public subscript<S>(dynamicMember p: WritableKeyPath<Value, S>) -> Binding<S> { fatalError() }
}
@propertyWrapper public struct FocusState<Value: Hashable> {
    public struct Binding {}
    public init() where Value == Bool {}
    public var wrappedValue: Value { get { fatalError() } nonmutating set {} }
    public var projectedValue: Binding { fatalError() }
}
public struct EnvironmentValues {
    public var scenePhase: ScenePhase { .active }
    public var horizontalSizeClass: UserInterfaceSizeClass? { nil }
    public var accessibilityReduceMotion: Bool { false }
    public var openURL: OpenURLAction { fatalError() }
    public var locale: Locale { get { fatalError() } set {} }
}
public enum UserInterfaceSizeClass: Sendable { case compact, regular }
@MainActor @preconcurrency public struct OpenURLAction { public func callAsFunction(_ url: URL) {} }
public enum ScenePhase: Comparable, Sendable { case background, inactive, active }
@propertyWrapper public struct Environment<Value> {
    public init(_ p: KeyPath<EnvironmentValues, Value>) {}
    public init(_ type: Value.Type) where Value: AnyObject & Observable {}
    public var wrappedValue: Value { fatalError() }
}

// MARK: App
@MainActor @preconcurrency public protocol Scene { associatedtype Body: Scene; @SceneBuilder @MainActor @preconcurrency var body: Body { get } }
extension Never: Scene {}
extension Scene { nonisolated public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping (V, V) -> Void) -> some Scene { self } }
@MainActor @preconcurrency @propertyWrapper public struct UIApplicationDelegateAdaptor<DelegateType: NSObject & UIApplicationDelegate> {
    public init(_ delegateType: DelegateType.Type = DelegateType.self) {}
    public var wrappedValue: DelegateType { fatalError() }
}
@propertyWrapper public struct ScaledMetric<Value: BinaryFloatingPoint> {
    public init(wrappedValue: Value, relativeTo textStyle: Font.TextStyle) { fatalError() }
    public init(wrappedValue: Value) { fatalError() }
    public var wrappedValue: Value { fatalError() }
}
@resultBuilder public enum SceneBuilder { public static func buildBlock<C: Scene>(_ c: C) -> C { c } }
public struct WindowGroup<Content: View>: Scene {
    nonisolated public init(@ViewBuilder content: () -> Content) {}
    public var body: Never { fatalError() }
}
@MainActor @preconcurrency public protocol App {
    associatedtype Body: Scene
    @SceneBuilder @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
extension App { @MainActor @preconcurrency public static func main() {} }

// MARK: Values
public struct LocalizedStringKey: ExpressibleByStringInterpolation, Equatable { public init(stringLiteral v: String) {} }
extension Color: _Leaf {}
public struct Color: ShapeStyle, Hashable, Sendable {
    public init(uiColor: UIColor) {}
    public func opacity(_ o: Double) -> Color { self }
}
public protocol ShapeStyle: Sendable {}
public struct Font: Hashable, Sendable {
    public enum TextStyle: Sendable { case largeTitle, title, title2, title3, headline, subheadline, body, callout, footnote, caption, caption2 }
    public enum Design: Sendable { case `default`, serif, rounded, monospaced }
    public enum Weight: Sendable { case regular, medium, semibold, bold, heavy }
    public static let largeTitle = Font(), title = Font(), title2 = Font(), title3 = Font(), headline = Font(), subheadline = Font(), body = Font()
    public static let footnote = Font(), caption = Font(), caption2 = Font()
    public static func system(size: CGFloat, weight: Font.Weight? = nil, design: Font.Design? = nil) -> Font { Font() }
    init() {}
    public func monospacedDigit() -> Font { self }
    public func weight(_ w: Weight) -> Font { self }
}
public struct UnitPoint: Hashable, Sendable { public static let leading = Self(), center = Self() }
public struct HorizontalAlignment: Equatable, Sendable { public static let leading = Self(), center = Self(), trailing = Self() }
public struct VerticalAlignment: Equatable, Sendable { public static let top = Self(), center = Self(), bottom = Self(), firstTextBaseline = Self() }
public struct Alignment: Equatable, Sendable { public static let center = Self(), leading = Self(), trailing = Self(), top = Self(), topLeading = Self() }
public enum TextAlignment: Sendable { case leading, center, trailing }
public enum ContentMode: Sendable { case fit, fill }
public struct Axis: Sendable {
    public static let horizontal = Axis(), vertical = Axis()
    init() {}
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int8
        public init(rawValue: Int8) { self.rawValue = rawValue }
        public static let horizontal = Set(rawValue: 1), vertical = Set(rawValue: 2)
    }
}
public struct Edge { public struct Set: OptionSet, Sendable { public let rawValue: Int8; public init(rawValue: Int8) { self.rawValue = rawValue }
    public static let top = Set(rawValue: 1), leading = Set(rawValue: 2), bottom = Set(rawValue: 4), trailing = Set(rawValue: 8), horizontal = Set(rawValue: 10), vertical = Set(rawValue: 5), all = Set(rawValue: 15) } }
public struct UIKeyboardType: Sendable { public static let decimalPad = Self() }
public struct Animation: Equatable, Sendable { public static func linear(duration: TimeInterval) -> Animation { fatalError() } }
public struct SensoryFeedback: Equatable, Sendable { public static let warning = Self() }
public struct AccessibilityTraits: SetAlgebra, Sendable {
    public typealias Element = AccessibilityTraits
    public static let isButton = Self(), isHeader = Self(), isSelected = Self(), isLink = Self(), isImage = Self(), isModal = Self(), isToggle = Self()
    public static let updatesFrequently = Self(), allowsDirectInteraction = Self()
    public init() {}
    public func contains(_ member: Self) -> Bool { fatalError() }
    public func union(_ other: Self) -> Self { fatalError() }
    public func intersection(_ other: Self) -> Self { fatalError() }
    public func symmetricDifference(_ other: Self) -> Self { fatalError() }
    public mutating func insert(_ newMember: Self) -> (inserted: Bool, memberAfterInsert: Self) { fatalError() }
    public mutating func remove(_ member: Self) -> Self? { fatalError() }
    public mutating func update(with newMember: Self) -> Self? { fatalError() }
    public mutating func formUnion(_ other: Self) {}
    public mutating func formIntersection(_ other: Self) {}
    public mutating func formSymmetricDifference(_ other: Self) {}
}
public struct AccessibilityChildBehavior: Hashable, Sendable { public static let ignore = Self(), contain = Self(), combine = Self() }
public enum AccessibilityNotification {
    public struct Announcement { public init(_ announcement: String) {}; public func post() {} }
}
public protocol Transferable {}
extension Data: Transferable {}
extension URL: Transferable {}

// MARK: Shapes
public struct StrokeStyle: Equatable, Sendable {
    public init(lineWidth: CGFloat = 1, lineCap: CGLineCap = .butt, lineJoin: CGLineJoin = .miter, miterLimit: CGFloat = 10, dash: [CGFloat] = [], dashPhase: CGFloat = 0) {}
}
public enum CGLineCap: Int32, Sendable { case butt, round, square }
public enum CGLineJoin: Int32, Sendable { case miter, round, bevel }
public struct Path: Shape {
    nonisolated public init() {}
    nonisolated public init(_ rect: CGRect) {}
    nonisolated public mutating func move(to: CGPoint) {}
    nonisolated public mutating func addLine(to: CGPoint) {}
    nonisolated public mutating func addCurve(to: CGPoint, control1: CGPoint, control2: CGPoint) {}
    nonisolated public mutating func addRect(_ rect: CGRect) {}
    nonisolated public mutating func closeSubpath() {}
    nonisolated public func path(in rect: CGRect) -> Path { self }
}
public protocol Shape: Sendable, View { nonisolated func path(in rect: CGRect) -> Path }
public struct _ShapeView: _Leaf {}
extension Shape { public var body: _ShapeView { fatalError() } }
extension Shape {
    nonisolated public func fill<S: ShapeStyle>(_ content: S) -> some View { EmptyView() }
    nonisolated public func stroke(style: StrokeStyle) -> some View { EmptyView() }
    nonisolated public func stroke<S: ShapeStyle>(_ content: S, style: StrokeStyle) -> some View { EmptyView() }
}
public struct RoundedRectangle: Shape { nonisolated public init(cornerRadius: CGFloat) {}; nonisolated public func path(in rect: CGRect) -> Path { Path() } }
public struct Rectangle: Shape { nonisolated public init() {}; nonisolated public func path(in rect: CGRect) -> Path { Path() } }
public struct Circle: Shape { nonisolated public init() {}; nonisolated public func path(in rect: CGRect) -> Path { Path() } }

// MARK: Gestures
@MainActor @preconcurrency public protocol Gesture<Value> { associatedtype Value }
public struct DragGesture: Gesture {
    public struct Value: Equatable, Sendable { public var location: CGPoint; public var translation: CGSize { fatalError() } }
    nonisolated public init(minimumDistance: CGFloat = 10) {}
    public func onChanged(_ action: @escaping (Value) -> Void) -> _ChangedGesture { fatalError() }
}
public struct _ChangedGesture: Gesture {
    public typealias Value = DragGesture.Value
    public func onEnded(_ action: @escaping (Value) -> Void) -> _EndedGesture { fatalError() }
}
public struct _EndedGesture: Gesture { public typealias Value = DragGesture.Value }

// MARK: Views
public struct Text: _Leaf {
    nonisolated public init(verbatim: String) {}
    public func font(_ f: Font?) -> Text { self }
    public func foregroundStyle<S: ShapeStyle>(_ s: S) -> Text { self }
}
public struct Image: _Leaf { nonisolated public init(systemName: String) {}; nonisolated public init(uiImage: UIImage) {}; public func resizable() -> Image { self } }
public struct Button<L: View>: _Leaf { public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> L) {} }
extension Button where L == Text {
    public init(_ key: LocalizedStringKey, action: @escaping @MainActor () -> Void) {}
    @_disfavoredOverload public init<S: StringProtocol>(_ s: S, action: @escaping @MainActor () -> Void) {}
}
public struct TextField<L: View>: _Leaf {}
extension TextField where L == Text {
    public init(_ key: LocalizedStringKey, text: Binding<String>) {}
    public init(_ key: LocalizedStringKey, text: Binding<String>, axis: Axis) {}
}
public struct ProgressView<L: View, V: View>: _Leaf {}
extension ProgressView where V == EmptyView {
    nonisolated public init() where L == EmptyView {}
    nonisolated public init<N: BinaryFloatingPoint>(value: N?, total: N = 1.0) where L == EmptyView {}
}
public struct ForEach<Data: RandomAccessCollection, ID: Hashable, C> { public let data: Data }
extension ForEach: View where C: View {
    public var body: Never { fatalError() }
    public init(_ data: Data, @ViewBuilder content: @escaping (Data.Element) -> C) where ID == Data.Element.ID, Data.Element: Identifiable { fatalError() }
    public init(_ data: Data, id: KeyPath<Data.Element, ID>, @ViewBuilder content: @escaping (Data.Element) -> C) { fatalError() }
}
public struct VStack<C: View>: _Leaf { nonisolated public init(alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> C) {} }
public struct HStack<C: View>: _Leaf { nonisolated public init(alignment: VerticalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> C) {} }
public struct ZStack<C: View>: _Leaf { nonisolated public init(alignment: Alignment = .center, @ViewBuilder content: () -> C) {} }
public struct Spacer: _Leaf { nonisolated public init(minLength: CGFloat? = nil) {} }
public struct Divider: _Leaf { nonisolated public init() {} }
public struct ScrollView<C: View>: _Leaf { nonisolated public init(_ axes: Axis.Set = .vertical, @ViewBuilder content: () -> C) {} }
public struct Grid<C: View>: _Leaf { nonisolated public init(alignment: Alignment = .center, horizontalSpacing: CGFloat? = nil, verticalSpacing: CGFloat? = nil, @ViewBuilder content: () -> C) {} }
public struct GridRow<C: View>: _Leaf { nonisolated public init(alignment: VerticalAlignment? = nil, @ViewBuilder content: () -> C) {} }
public struct GridItem: Sendable {
    public enum Size: Sendable { case fixed(CGFloat), flexible(minimum: CGFloat = 10, maximum: CGFloat = .infinity), adaptive(minimum: CGFloat, maximum: CGFloat = .infinity) }
    public init(_ size: GridItem.Size = .flexible(), spacing: CGFloat? = nil, alignment: Alignment? = nil) {}
}
public struct LazyVGrid<C: View>: _Leaf { nonisolated public init(columns: [GridItem], alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> C) {} }
public struct ViewThatFits<C: View>: _Leaf { nonisolated public init(in axes: Axis.Set = [.horizontal, .vertical], @ViewBuilder content: () -> C) {} }
public struct GeometryProxy { public var size: CGSize { fatalError() } }
public struct GeometryReader<C: View>: _Leaf { nonisolated public init(@ViewBuilder content: @escaping (GeometryProxy) -> C) {} }
public protocol TimelineSchedule {}
public struct PeriodicTimelineSchedule: TimelineSchedule { public init(from startDate: Date, by interval: TimeInterval) {} }
extension TimelineSchedule where Self == PeriodicTimelineSchedule {
    public static func periodic(from startDate: Date, by interval: TimeInterval) -> PeriodicTimelineSchedule { fatalError() }
}
public struct TimelineView<Schedule: TimelineSchedule, C> {
    public struct Context { public let date: Date }
}
extension TimelineView: View where C: View {
    public var body: Never { fatalError() }
    nonisolated public init(_ schedule: Schedule, @ViewBuilder content: @escaping (TimelineView<Schedule, Never>.Context) -> C) {}
}
public struct ShareLink<L: View>: _Leaf { public init<I: Transferable>(item: I, @ViewBuilder label: () -> L) {} }
public struct UIViewRepresentableContext<Representable: UIViewRepresentable> {}
@MainActor @preconcurrency public protocol UIViewRepresentable: View where Body == Never {
    associatedtype UIViewType: UIView
    typealias Context = UIViewRepresentableContext<Self>
    @MainActor @preconcurrency func makeUIView(context: Context) -> UIViewType
    @MainActor @preconcurrency func updateUIView(_ uiView: UIViewType, context: Context)
}
extension UIViewRepresentable { public var body: Never { fatalError() } }

// MARK: Toolbars
public struct ToolbarItemPlacement: Sendable { public static let keyboard = Self() }
@MainActor @preconcurrency public protocol ToolbarContent {}
public struct ToolbarItemGroup<C: View>: ToolbarContent { nonisolated public init(placement: ToolbarItemPlacement, @ViewBuilder content: () -> C) {} }
@resultBuilder public enum ToolbarContentBuilder { public static func buildBlock<C: ToolbarContent>(_ c: C) -> C { c } }

// MARK: Modifiers
public struct ButtonStyleConfiguration {
    public struct Label: _Leaf {}
    public let label: Label
    public let isPressed: Bool
}
@MainActor @preconcurrency public protocol ButtonStyle {
    associatedtype Body: View
    typealias Configuration = ButtonStyleConfiguration
    @ViewBuilder @MainActor @preconcurrency func makeBody(configuration: Configuration) -> Body
}
public struct ScrollDismissesKeyboardMode: Sendable { public static let interactively = Self() }

extension View {
    nonisolated public func font(_ f: Font?) -> some View { _m() }
    nonisolated public func foregroundStyle<S: ShapeStyle>(_ s: S) -> some View { _m() }
    nonisolated public func tint(_ c: Color?) -> some View { _m() }
    nonisolated public func opacity(_ o: Double) -> some View { _m() }
    nonisolated public func padding(_ l: CGFloat) -> some View { _m() }
    nonisolated public func padding(_ e: Edge.Set = .all, _ l: CGFloat? = nil) -> some View { _m() }
    nonisolated public func frame(width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center) -> some View { _m() }
    nonisolated public func frame(minWidth: CGFloat? = nil, idealWidth: CGFloat? = nil, maxWidth: CGFloat? = nil, minHeight: CGFloat? = nil, idealHeight: CGFloat? = nil, maxHeight: CGFloat? = nil, alignment: Alignment = .center) -> some View { _m() }
    nonisolated public func position(x: CGFloat = 0, y: CGFloat = 0) -> some View { _m() }
    nonisolated public func aspectRatio(_ r: CGFloat? = nil, contentMode: ContentMode) -> some View { _m() }
    nonisolated public func scaleEffect(x: CGFloat = 1, y: CGFloat = 1, anchor: UnitPoint = .center) -> some View { _m() }
    nonisolated public func scaledToFit() -> some View { _m() }
    nonisolated public func background<S: ShapeStyle>(_ s: S) -> some View { _m() }
    nonisolated public func background<S: ShapeStyle, T: Shape>(_ s: S, in shape: T) -> some View { _m() }
    nonisolated public func background<V: View>(alignment: Alignment = .center, @ViewBuilder content: () -> V) -> some View { _m() }
    nonisolated public func overlay<V: View>(alignment: Alignment = .center, @ViewBuilder content: () -> V) -> some View { _m() }
    nonisolated public func multilineTextAlignment(_ a: TextAlignment) -> some View { _m() }
    nonisolated public func lineLimit(_ n: Int?) -> some View { _m() }
    nonisolated public func lineLimit(_ r: ClosedRange<Int>) -> some View { _m() }
    nonisolated public func minimumScaleFactor(_ f: CGFloat) -> some View { _m() }
    nonisolated public func animation<V: Equatable>(_ a: Animation?, value: V) -> some View { _m() }
    nonisolated public func contentShape<S: Shape>(_ shape: S) -> some View { _m() }
    nonisolated public func gesture<G: Gesture>(_ gesture: G) -> some View { _m() }
    nonisolated public func buttonStyle<S: ButtonStyle>(_ s: S) -> some View { _m() }
    nonisolated public func keyboardType(_ t: UIKeyboardType) -> some View { _m() }
    nonisolated public func autocorrectionDisabled(_ d: Bool = true) -> some View { _m() }
    nonisolated public func onSubmit(_ action: @escaping () -> Void) -> some View { _m() }
    nonisolated public func focused(_ b: FocusState<Bool>.Binding) -> some View { _m() }
    nonisolated public func toolbar<C: ToolbarContent>(@ToolbarContentBuilder content: () -> C) -> some View { _m() }
    nonisolated public func scrollPosition<ID: Hashable>(id: Binding<ID?>, anchor: UnitPoint? = nil) -> some View { _m() }
    nonisolated public func scrollTargetLayout(isEnabled: Bool = true) -> some View { _m() }
    nonisolated public func scrollDismissesKeyboard(_ mode: ScrollDismissesKeyboardMode) -> some View { _m() }
    nonisolated public func sensoryFeedback<T: Equatable>(_ feedback: SensoryFeedback, trigger: T) -> some View { _m() }
    @_disfavoredOverload nonisolated public func accessibilityLabel<S: StringProtocol>(_ s: S) -> some View { _m() }
    @_disfavoredOverload nonisolated public func accessibilityHint<S: StringProtocol>(_ s: S) -> some View { _m() }
    nonisolated public func accessibilityHidden(_ hidden: Bool) -> some View { _m() }
    nonisolated public func accessibilityElement(children: AccessibilityChildBehavior = .ignore) -> some View { _m() }
    nonisolated public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View { _m() }
    nonisolated public func accessibilityAction(_ action: @escaping () -> Void) -> some View { _m() }
    nonisolated public func task(priority: TaskPriority = .userInitiated, _ action: sending @escaping @isolated(any) () async -> Void) -> some View { _m() }
    nonisolated public func task<T: Equatable>(id value: T, priority: TaskPriority = .userInitiated, _ action: sending @escaping @isolated(any) () async -> Void) -> some View { _m() }
    nonisolated public func id<ID: Hashable>(_ id: ID) -> some View { _m() }
    nonisolated public func onChange<V: Equatable>(of v: V, initial: Bool = false, _ action: @escaping (V, V) -> Void) -> some View { _m() }
    nonisolated public func environment<T: AnyObject & Observable>(_ o: T?) -> some View { _m() }
    nonisolated public func environment<V>(_ p: WritableKeyPath<EnvironmentValues, V>, _ v: V) -> some View { _m() }
    @ViewBuilder nonisolated func _m() -> EmptyView { EmptyView() }
}
