plugins {
    id("com.android.application")
    id("org.jetbrains.kotlin.android")
}

val pom = file("pom.xml").readText()
fun version(of: String) = Regex("<$of>([^<]+)</$of>").find(pom)!!.groupValues[1]

/** What ./build-core leaves: the core for each kind of phone, and its Kotlin. */
val core = file("../target")

android {
    namespace = "app.coilside"
    compileSdk = version("target.sdk").toInt()
    ndkVersion = version("ndk.version")
    defaultConfig {
        applicationId = "app.coilside"
        minSdk = version("min.sdk").toInt()
        targetSdk = version("target.sdk").toInt()
        ndk { abiFilters += listOf("arm64-v8a", "x86_64") }
    }
    sourceSets["main"].apply {
        java.srcDirs("src/main/kotlin", core.resolve("bindings/kotlin"))
        // The pictograms have the core's own names, and are found by them.
        res.srcDirs("src/main/res", "src/signs/res")
        jniLibs.srcDirs(core.resolve("android/jniLibs"))
    }
    buildTypes {
        release {
            isMinifyEnabled = true
            isShrinkResources = false
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "keep.pro")
            vcsInfo.include = false
        }
    }
    // Uncompressed and aligned in the file, so that phones with pages of 16 KB map them as they are.
    packaging.jniLibs.useLegacyPackaging = false
    // Signed by Google's key for one store: two builds would differ.
    dependenciesInfo {
        includeInApk = false
        includeInBundle = false
    }
    compileOptions {
        sourceCompatibility = JavaVersion.toVersion(version("java.version"))
        targetCompatibility = JavaVersion.toVersion(version("java.version"))
    }
}

kotlin { jvmToolchain(version("java.version").toInt()) }

dependencies {
    // Beside the framework nothing: these two are asked for by the core's generated Kotlin.
    implementation("net.java.dev.jna:jna:${version("jna.version")}@aar")
    implementation("androidx.annotation:annotation:${version("androidx.annotation.version")}")
}

// The same files in the same order and without times, so that two builds of one commit are equal.
tasks.withType<AbstractArchiveTask>().configureEach {
    isPreserveFileTimestamps = false
    isReproducibleFileOrder = true
}
