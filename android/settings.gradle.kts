// The build for phones. Its versions stand in pom.xml, which compiles and tests the same sources without an Android SDK.
pluginManagement {
    val pom = File(rootDir, "pom.xml").readText()
    fun version(of: String) = Regex("<$of>([^<]+)</$of>").find(pom)!!.groupValues[1]
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
    plugins {
        id("com.android.application") version version("gradle.plugin.version")
        id("org.jetbrains.kotlin.android") version version("kotlin.version")
    }
}

dependencyResolutionManagement {
    repositoriesMode = RepositoriesMode.FAIL_ON_PROJECT_REPOS
    repositories {
        google()
        mavenCentral()
    }
}

rootProject.name = "coilside"
