// swift-tools-version: 6.0
import PackageDescription

// On Apple hosts the C module comes out of the XCFramework that `ios/make-xcframework` builds. On Linux it is the C target below, linked to
// the library that cargo built, and Apple's modules are stand-ins of the few signatures that the app uses. COILSIDE_APPLE lets Linux look at
// Apple's arm (`swift package dump-package`).
#if os(Linux)
    let apple = !(Context.environment["COILSIDE_APPLE"] ?? "").isEmpty
#else
    let apple = true
#endif
let library = Context.environment["COILSIDE_LIB"] ?? Context.packageDirectory + "/../target/debug"

let ffi: [Target] =
    apple
    ? [.binaryTarget(name: "CoilsideFFI", path: "CoilsideFFI.xcframework")]
    : [
        .target(
            name: "CoilsideFFI",
            linkerSettings: [
                .unsafeFlags(["-L" + library, "-Xlinker", "-rpath=" + library, "-Xlinker", "--allow-shlib-undefined"]),
                .linkedLibrary("coilside"),
            ])
    ]

let appleModules = [
    "AVFoundation", "CoreLocation", "CryptoKit", "Network", "PhotosUI", "Security", "SwiftUI", "UIKit", "UserNotifications", "WebKit",
]
let standIns: [Target] =
    apple
    ? []
    : appleModules.map { module in
        let under: [String: [Target.Dependency]] = [
            "UIKit": [], "SwiftUI": ["UIKit"], "PhotosUI": ["SwiftUI"], "AVFoundation": ["UIKit"], "CryptoKit": ["Security"], "WebKit": ["UIKit"],
        ]
        return .target(name: module, dependencies: under[module] ?? [], path: "StandIn/" + module)
    }
// On Apple hosts the app's own sources are built by the project of Xcode (`project.yml`), beside this package.
let app: [Target] =
    apple ? [] : [.target(name: "CoilsideApp", dependencies: ["CoilsideKit", "CoilsideCore"] + appleModules.map { .byName(name: $0) })]

let package = Package(
    name: "Coilside",
    defaultLocalization: "en",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [
        .library(name: "CoilsideKit", targets: ["CoilsideKit", "CoilsideCore"])
    ],
    targets: ffi + standIns + app + [
        // What uniffi writes is Swift 5.
        .target(name: "CoilsideCore", dependencies: ["CoilsideFFI"], swiftSettings: [.swiftLanguageMode(.v5)]),
        .target(name: "CoilsideKit", dependencies: ["CoilsideCore"], resources: [.process("Resources")]),
        .testTarget(name: "CoilsideKitTests", dependencies: ["CoilsideKit", "CoilsideCore"]),
    ])
